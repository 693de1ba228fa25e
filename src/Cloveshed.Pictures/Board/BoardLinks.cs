using Cloveshed.Core;

namespace Cloveshed.Pictures.Board;

/// <summary>
/// Where the threads and runs of a board lead on a page that can follow them. Each link carries its key as data-key, so that the page
/// can mark what is chosen, and stays out of the tab order: hundreds of stops are no way to a run, and the page offers another.
/// </summary>
/// <param name="Lot">The address that explains a lot.</param>
/// <param name="Run">The address that explains a run (of sorted-out bulbs where the last is true), and its key; null: it leads nowhere.</param>
public sealed record BoardLinks(Func<LotId, string> Lot, Func<LotId, LineId, int, bool, (string Href, string Key)?> Run);
