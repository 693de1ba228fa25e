using Cloveshed.Core;

namespace Cloveshed.Web.Line;

/// <summary>Addresses of the pages about a lot in Line.</summary>
public static class LinePaths
{
    public const string Sizer = "sizer", Sample = "sample", Drum = "drum", Count = "count", Sheet = "sheet";

    public static string Of(string kind, LotId lot) => $"/line/{kind}/{Uri.EscapeDataString(lot.Text)}";
}
