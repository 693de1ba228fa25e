namespace Cloveshed.Core.Planning;

/// <summary>What a bin's space in a room is worth (scaled money), paid by each bin that stands there at the end of a week.</summary>
internal readonly record struct SpaceRent(int Week, double PerBin);
