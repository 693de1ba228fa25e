using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Ledger.Yard;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Keep;

namespace Cloveshed.Web.Shared;

/// <summary>
/// What one request reads, once and the same for all of its page: the ledger's state for the viewer's day, the season, what is
/// known of the lots, the adopted plan. What costs time to make is kept between requests by what it was made from.
/// </summary>
public sealed class ShedReading(ShedLedger ledger, Viewer viewer, PastShelf past, PlanShelf plans, LotShelf lots, BookShelf books, RecordShelf<RoomRecord, PlaceLog> placeLogs, RecordShelf<YardRecord, YardLog> yardLogs, ClockShelf clocks)
{
    private ShedState? state;
    private Reader? reader;
    private PlaceLog? placeLog;
    private YardLog? yardLog;
    private string? clockKey;

    public Viewer Viewer => viewer;

    /// <summary>Read when first asked for; a ledger that cannot be read throws its <see cref="LedgerFault"/>, which the error page tells.</summary>
    public ShedState State => state ??= viewer.AsOf is { } asOf ? past.Of(asOf) : ledger.Now();

    /// <summary>Null while no season has been opened (or not by that day).</summary>
    public Season? Season => State.Season;

    /// <summary>For pages that are only reached with a season.</summary>
    public Season SeasonOpen => Season ?? throw new InvalidOperationException("No season is open.");

    public LotsKnown Lots => lots.Of(State.KnowledgeDigest, SeasonOpen);

    /// <summary>What was read and done in places, by the viewer's day.</summary>
    public PlaceLog PlaceLog => placeLog ??= placeLogs.Of(viewer.AsOf);

    /// <summary>Weather, drying and looks at lots, by the viewer's day.</summary>
    public YardLog YardLog => yardLog ??= yardLogs.Of(viewer.AsOf);

    /// <summary>The clocks of lots that were looked at or whose air was read.</summary>
    public ClockBook Clocks => clocks.Of(State, YardLog, PlaceLog);

    /// <summary>The plan to work by; null where none was adopted.</summary>
    public PlanAnswer? Plan => State.Adopted is { } adopted ? plans.Of(adopted) : null;

    /// <summary>What pages read off the adopted plan; null where none was adopted.</summary>
    public PlanBook? Book => State.Adopted is { } adopted && Season is { } season ? books.Of(adopted.Document, State.InputDigest, season, plans.Of(adopted)) : null;

    /// <summary>
    /// The adopted plan with its lots' paths by the clocks that are believed now: what is decided today goes by what was seen of a lot since the plan was made. The
    /// plan's own pages show it as it was made.
    /// </summary>
    public PlanBook? SeenBook => Book is not { } book || Clocks.Clocks.Count == 0 ? Book : books.Seen($"{State.Adopted!.Document} {ClockKey}", book, Clocks);

    /// <summary>What the clocks of lots rest on, for what is kept between requests.</summary>
    public string ClockKey => clockKey ??= ClockShelf.Key(State, YardLog, PlaceLog);

    /// <summary>Another plan that was made.</summary>
    public PlanAnswer PlanOf(PlanEntry entry) => plans.Of(entry);

    /// <summary>The unit that masses are shown in.</summary>
    public MassUnit Unit => viewer.Unit ?? Season?.Settings.MassUnit ?? MassUnit.Pound;

    /// <summary>Writes the season's numbers and days for the viewer.</summary>
    public Reader Reader => reader ??= new Reader(SeasonOpen.Settings, new ReportOptions(viewer.Language, Unit));
}
