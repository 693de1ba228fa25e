namespace Cloveshed.Web.Shared;

/// <summary>How far work is that goes on behind a page, in words and as a share, for Shared/progress.js.</summary>
internal sealed record FarSaid(string Said, double Done, bool Ended);
