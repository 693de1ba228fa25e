using System.Globalization;
using System.Text;
using System.Text.Json;
using Cloveshed.Core.Seasons;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// Writes a season as files in ways that the contract allows and the program's own writer would not choose: columns in a drawn
/// order, quotes where none are needed, either line end, optional columns and files that hold nothing left out.
/// </summary>
public static class OddFolder
{
    private sealed record Column<T>(string Name, bool Required, Func<T, string?> Cell);

    /// <summary>All files in one text, for comparing two seasons.</summary>
    public static string Text(Season season) => string.Concat(Files(season, null).OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"== {f.Key}\n{f.Value}"));

    /// <summary>File name to content; without a generator plainly: every column, no needless quotes, line feeds.</summary>
    public static IReadOnlyDictionary<string, string> Files(Season s, Pcg? odd)
    {
        Dictionary<string, string> files = new(StringComparer.Ordinal) { ["season.json"] = Json(s.Settings, odd) };
        string Week(int w) => Day(s.Settings.Monday(w));
        void Add<T>(string file, bool required, IReadOnlyList<T> rows, params Column<T>[] columns)
        {
            if (!required && rows.Count == 0 && (odd is null || odd.Chance(0.7))) return;
            Column<T>[] kept = [.. columns.Where(c => c.Required || odd is null || odd.Chance(0.5) || rows.Any(r => c.Cell(r) is not null))];
            if (odd is not null) kept = odd.Shuffled(kept);
            string end = odd is not null && odd.Chance(0.5) ? "\r\n" : "\n";
            StringBuilder text = new();
            text.AppendJoin(',', kept.Select(c => c.Name)).Append(end);
            foreach (T row in rows) text.AppendJoin(',', kept.Select(c => Quoted(c.Cell(row), odd))).Append(end);
            files[file] = text.ToString();
        }

        Add("sizes.csv", true, s.Sizes, Must<SizeClass>("class", c => c.Id.Text), May<SizeClass>("code", c => c.Code), Must<SizeClass>("min_mm", c => N(c.MinMm)), May<SizeClass>("max_mm", c => N(c.MaxMm)));
        Add("varieties.csv", true, s.Varieties, Must<Variety>("variety", v => v.Id.Text),
            May<Variety>("mass_a", v => N(v.BulbLaw.A)), May<Variety>("mass_b", v => N(v.BulbLaw.B)), May<Variety>("mass_s", v => N(v.BulbLaw.S)),
            May<Variety>("keeps", v => v.Keeps is { } k ? Word(k) : null), May<Variety>("cloves_per_bulb", v => N(v.ClovesPerBulb)), May<Variety>("clove_cv", v => N(v.CloveCv)),
            May<Variety>("clove_a", v => N(v.CloveLaw?.A)), May<Variety>("clove_b", v => N(v.CloveLaw?.B)), May<Variety>("clove_s", v => N(v.CloveLaw?.S)));
        Add("places.csv", true, s.Places, Must<Place>("place", p => p.Id.Text), Must<Place>("kind", p => Word(p.Kind)), Must<Place>("capacity_bins", p => N(p.CapacityBins)),
            May<Place>("temp_c", p => N(p.TempC)), May<Place>("rh", p => N(p.Rh)), May<Place>("o2", p => N(p.O2)), May<Place>("co2", p => N(p.Co2)),
            May<Place>("cost_per_bin_week", p => Zero(p.CostPerBinWeek)), May<Place>("cost_per_week", p => Zero(p.CostPerWeek)), May<Place>("move_in_cost", p => Zero(p.MoveInCost)),
            May<Place>("run_out_weeks", p => N(p.RunOutWeeks)));
        Add("place-weeks.csv", false, s.PlaceWeeks, Must<PlaceWeek>("place", p => p.Place.Text), Must<PlaceWeek>("week", p => Week(p.Week)), May<PlaceWeek>("temp_c", p => N(p.TempC)), May<PlaceWeek>("rh", p => N(p.Rh)));
        Add("lots.csv", true, s.Lots, Must<LotRow>("lot", l => l.Lot.Text), Must<LotRow>("place", l => l.Place.Text), Must<LotRow>("variety", l => l.Variety.Text),
            Must<LotRow>("field", l => l.Field), Must<LotRow>("harvested", l => Day(l.Harvested)), Must<LotRow>("bins", l => N(l.Bins)), Must<LotRow>("net", l => N(l.Net)),
            May<LotRow>("state", l => l.State is { } x ? Word(x) : null), May<LotRow>("net_low", l => N(l.NetLow)), May<LotRow>("net_high", l => N(l.NetHigh)),
            May<LotRow>("organic", l => Yes(l.Organic)), May<LotRow>("cured", l => l.Cured is { } c ? (c ? "yes" : "no") : null), May<LotRow>("inhibitor", l => Yes(l.Inhibitor)),
            May<LotRow>("fresh_share", l => N(l.FreshShare)), May<LotRow>("crack_share", l => N(l.CrackShare)), May<LotRow>("seed_class", l => l.SeedClass?.ToString()),
            May<LotRow>("mean_g", l => N(l.MeanG)), May<LotRow>("cv", l => N(l.Cv)), May<LotRow>("ready", l => l.Ready is { } d ? Day(d) : null), May<LotRow>("hold", l => Yes(l.Hold)));
        Add("samples.csv", false, s.Samples, Must<SampleBulb>("lot", b => b.Lot.Text), Must<SampleBulb>("date", b => Day(b.Date)), Must<SampleBulb>("weight_g", b => N(b.WeightG)),
            May<SampleBulb>("diameter_mm", b => N(b.DiameterMm)), May<SampleBulb>("defect", b => b.Defect == Defect.None ? null : Word(b.Defect)));
        Add("yields.csv", true, s.Yields, Must<ModeYield>("mode", y => Word(y.Mode)), Must<ModeYield>("kept_share", y => N(y.KeptShare)));
        Add("lines.csv", true, s.Lines, Must<Line>("line", l => l.Id.Text), Must<Line>("mode", l => Word(l.Mode)), Must<Line>("rate_per_hour", l => N(l.RatePerHour)), Must<Line>("hours_per_week", l => N(l.HoursPerWeek)),
            May<Line>("overtime_hours", l => Zero(l.OvertimeHours)), May<Line>("cost_per_hour", l => Zero(l.CostPerHour)), May<Line>("overtime_cost_per_hour", l => N(l.OvertimeCostPerHour)),
            // What the empty cell means is not said, so it is never left empty.
            Must<Line>("heads", l => N(l.Heads)), May<Line>("min_run", l => Zero(l.MinRun)), May<Line>("setup_hours", l => Zero(l.SetupHours)));
        Add("line-weeks.csv", false, s.LineWeeks, Must<LineWeek>("line", l => l.Line.Text), Must<LineWeek>("week", l => Week(l.Week)), Must<LineWeek>("hours", l => N(l.Hours)), May<LineWeek>("overtime_hours", l => N(l.OvertimeHours)));
        Add("people.csv", false, s.People, Must<PeopleWeek>("week", p => Week(p.Week)), Must<PeopleWeek>("hours", p => N(p.Hours)));
        Add("products.csv", true, s.Products, Must<Product>("product", p => p.Id.Text), Must<Product>("form", p => Word(p.Form)), Must<Product>("from", p => p.From), Must<Product>("net", p => N(p.Net)),
            May<Product>("unit_cost", p => Zero(p.UnitCost)), May<Product>("shelf_weeks", p => p.ShelfWeeks == 0 ? null : N(p.ShelfWeeks)), May<Product>("organic", p => Yes(p.Organic)));
        Add("clove-grades.csv", false, s.CloveGrades, Must<CloveGrade>("grade", c => c.Id.Text), Must<CloveGrade>("min_mm", c => N(c.MinMm)), May<CloveGrade>("max_mm", c => N(c.MaxMm)));
        Add("stock.csv", false, s.Stock, Must<StockRow>("product", k => k.Product.Text), Must<StockRow>("made", k => Week(k.Made)), Must<StockRow>("units", k => N(k.Units)), May<StockRow>("lot", k => k.Lot?.Text));
        Add("rooms.csv", false, s.SealedRooms, Must<SealedRoom>("place", r => r.Place.Text), Must<SealedRoom>("sealed", r => Day(r.Sealed)));
        Add("orders.csv", true, s.Orders, Must<OrderLine>("order", o => o.Order.Text), Must<OrderLine>("line", o => o.Number), Must<OrderLine>("customer", o => o.Customer), Must<OrderLine>("product", o => o.Product.Text),
            May<OrderLine>("ship_from", o => o.ShipFrom == s.Settings.Monday(s.Settings.WeekOf(o.Due)) ? null : Day(o.ShipFrom)), Must<OrderLine>("due", o => Day(o.Due)),
            Must<OrderLine>("units", o => N(o.Units)), Must<OrderLine>("price", o => N(o.Price)), May<OrderLine>("firm", o => o.Firm ? null : "no"), May<OrderLine>("late_cost", o => Zero(o.LateCost)),
            May<OrderLine>("short_cost", o => Zero(o.ShortCost)), May<OrderLine>("larger_ok", o => Yes(o.LargerOk)), May<OrderLine>("whole", o => Yes(o.Whole)));
        Add("market.csv", false, s.Market, Must<MarketWeek>("product", m => m.Product.Text), Must<MarketWeek>("week", m => Week(m.Week)), Must<MarketWeek>("price", m => N(m.Price)),
            May<MarketWeek>("p10", m => N(m.P10)), Must<MarketWeek>("p50", m => N(m.P50)), May<MarketWeek>("p90", m => N(m.P90)));
        Add("seed-needs.csv", false, s.SeedNeeds, Must<SeedNeed>("variety", n => n.Variety.Text), Must<SeedNeed>("net", n => N(n.Net)), Must<SeedNeed>("by", n => Day(n.By)), Must<SeedNeed>("seed_class", n => n.Class.ToString()), Must<SeedNeed>("short_cost", n => N(n.ShortCost)));
        Add("sell-as-is.csv", false, s.AsIsPrices, May<AsIsPrice>("variety", a => a.Variety?.Text), Must<AsIsPrice>("price", a => N(a.Price)), May<AsIsPrice>("limit", a => N(a.Limit)));
        return files;
    }

    /// <summary>Writes the files into a folder, UTF-8 without a byte order mark.</summary>
    public static void Write(Season season, string folder, Pcg? odd)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, string content) in Files(season, odd)) File.WriteAllText(Path.Combine(folder, name), content);
    }

    private static Column<T> Must<T>(string name, Func<T, string?> cell) => new(name, true, cell);
    private static Column<T> May<T>(string name, Func<T, string?> cell) => new(name, false, cell);
    private static string? N(double? value) => value?.ToString("R", CultureInfo.InvariantCulture);
    private static string? N(decimal? value) => value?.ToString(CultureInfo.InvariantCulture);
    private static string? N(int? value) => value?.ToString(CultureInfo.InvariantCulture);
    private static string? Zero(decimal value) => value == 0 ? null : N(value);
    private static string? Zero(double value) => value == 0 ? null : N(value);
    private static string? Yes(bool value) => value ? "yes" : null;
    private static string Day(LocalDate date) => LocalDatePattern.Iso.Format(date);
    private static string Word<T>(T value) where T : struct, Enum => value.ToString().ToLowerInvariant();

    private static string Quoted(string? cell, Pcg? odd) =>
        cell is null ? ""
        : cell.AsSpan().IndexOfAny("\",\r\n") >= 0 || (odd is not null && odd.Chance(0.1)) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
        : cell;

    private static string Json(SeasonSettings s, Pcg? odd)
    {
        List<KeyValuePair<string, object>> keys =
        [
            new("contract", 1), new("name", s.Name), new("first_week", Day(s.FirstWeek)), new("weeks", s.Weeks),
            new("mass_unit", s.MassUnit == MassUnit.Pound ? "lb" : "kg"), new("currency", s.Currency),
        ];
        if (s.AsOf != s.FirstWeek) keys.Add(new("as_of", Day(s.AsOf)));
        if (s.EndPrice != 0) keys.Add(new("end_price", s.EndPrice));
        if (s.Seed is { } seed) keys.Add(new("seed", seed));
        return JsonSerializer.Serialize(new Dictionary<string, object>(odd is null ? keys : odd.Shuffled(keys)), Format);
    }

    private static readonly JsonSerializerOptions Format = new() { WriteIndented = true };
}
