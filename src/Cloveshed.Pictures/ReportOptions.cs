using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures;

/// <summary>The two languages that every string exists in.</summary>
public enum Language { En, Es }

/// <summary>For whom a report or a picture is made: the language, and the unit in which masses are shown.</summary>
public sealed record ReportOptions(Language Language, MassUnit ShowIn);
