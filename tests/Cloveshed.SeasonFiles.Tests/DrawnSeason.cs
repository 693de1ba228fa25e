using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>Seasons drawn at random from a seed, sound by the contract and otherwise as wild as the files can carry: names with
/// commas, quotes and line ends, numbers of every size, cells empty or not.</summary>
internal sealed class DrawnSeason(int seed)
{
    private const string Letters = "aZ9 ,\"\n\r;ñ'葱#=|";
    private readonly Random random = new(seed);

    public Season Draw()
    {
        Season season = First();
        return Chance() ? season : Terms(season);
    }

    /// <summary>The same season by contract 2: lists that have every week, freight for any product, prices far above cuts and freight.</summary>
    private Season Terms(Season season)
    {
        SeasonSettings settings = season.Settings with { Contract = 2 };
        PriceListId[] lists = [.. Names(2).Select(name => new PriceListId(name))];
        DestinationId[] destinations = [.. Names(2).Select(name => new DestinationId(name))];
        ListPrice[] prices =
        [
            .. from list in lists from product in season.Products from second in new[] { false, true }
               select new ListPrice(list, product.Id, second ? 7 : -3500, second ? null : 6, 1000 + random.Next(1000)),
        ];
        Freight[] freight = [.. destinations.SelectMany(to => season.Products.Where(_ => Chance()).Select(product => new Freight(to, product.Id, random.Next(50))).Append(new Freight(to, null, random.Next(50))))];
        (decimal?, PriceListId?) Price() => Chance() ? (500 + random.Next(100), null) : (null, lists[random.Next(lists.Length)]);
        DestinationId? To() => Maybe(() => destinations[random.Next(destinations.Length)]);
        OrderTerms[] orders = [.. season.Orders.Select(line => Price() is var (price, list) ? new OrderTerms(line with { Price = 0 }, price, list, To()) : null!)];
        BuyerProgram[] programs =
        [
            .. Names(3).SelectMany(name => season.Products.Where(_ => Chance()).Select(product =>
            {
                (decimal? price, PriceListId? list) = Price();
                int from = random.Next(settings.Weeks), least = random.Next(100);
                return new BuyerProgram(
                    new ProgramId(name), $"{name}!", product.Id, from - random.Next(3), from + random.Next(10), least, Maybe(() => least + random.Next(100)), price, list, To(), Maybe(Money), Money(), Chance());
            })),
        ];
        Promotion[] promotions =
        [
            .. Names(3).Select(name => new Promotion(name, Maybe(() => programs.Length > 0 ? programs[0].Customer : Name()), season.Products[random.Next(season.Products.Count)].Id, -3, random.Next(60), random.Next(50), random.Next(20))),
        ];
        BuyerTerms terms = new(orders, prices, programs, promotions, freight);
        LoweredTerms lowered = TermsLowering.Of(settings, terms);
        return season with { Settings = settings, Terms = terms, Orders = lowered.Orders, PriceOrigins = lowered.Origins };
    }

    private Season First()
    {
        LocalDate first = new LocalDate(2024, 1, 1).PlusWeeks(random.Next(-2000, 2000));
        int weeks = random.Next(1, 60);
        SeasonSettings settings = new(
            Name(), first, weeks, Pick<MassUnit>(), "USD", first.PlusDays(random.Next(-20, 7 * weeks)), Money(), Maybe(() => random.Next()));
        SizeClass[] sizes = Sizes();
        CloveGrade[] grades = [.. Names(3).Select((name, at) => new CloveGrade(new CloveGradeId(name), at * 5 + 1, at < 2 ? at * 5 + 4.5 : null))];
        Variety[] varieties = [.. Names(3).Select(DrawVariety)];
        Place[] places = [.. Names(3).Select(DrawPlace)];
        LotRow[] lots = [.. Names(3).SelectMany(name => Rows(name, varieties, places, settings))];
        Line[] lines = [.. Names(3).Select(DrawLine)];
        Product[] products = [.. Names(3).Select(name => DrawProduct(name, sizes, grades))];
        SealedRoom[] rooms = [.. places.Where(place => place.Kind == PlaceKind.Sealed && Chance())
            .Select(place => new SealedRoom(place.Id, settings.AsOf.PlusDays(-random.Next(0, 5))))];
        return new(
            settings, sizes, varieties, places,
            [.. places.Where(_ => Chance()).Select(place => new PlaceWeek(place.Id, Week(settings), Maybe(Celsius), Maybe(Percent)))],
            lots,
            [.. lots.SelectMany(lot => Enumerable.Range(0, random.Next(3)).Select(_ => new SampleBulb(lot.Lot, Day(), Positive(5000), Maybe(() => Positive(500)), Pick<Defect>())))],
            [new(LineMode.Fresh, Share()), new(LineMode.Crack, Share()), new(LineMode.Seed, Share())],
            lines,
            [.. lines.Where(_ => Chance()).Select(line => new LineWeek(line.Id, Week(settings), Number(100), Maybe(() => Number(50))))],
            [.. Enumerable.Range(0, weeks).Where(_ => Chance()).Select(week => new PeopleWeek(week, Number(5000)))],
            products, grades,
            [.. products.Where(_ => Chance()).Select(product => new StockRow(product.Id, settings.AsOfWeek - random.Next(60), random.Next(1000), Chance() ? new LotId(Name()) : null))],
            rooms,
            [.. Names(4).SelectMany(order => Enumerable.Range(1, random.Next(1, 3)).Select(line => DrawOrder(order, line, products)))],
            [.. products.Where(_ => Chance()).Select(product => DrawMarket(product.Id, settings))],
            [.. varieties.Where(_ => Chance()).Select(variety => new SeedNeed(variety.Id, Number(1e6), Day(), Pick<SeedClass>(), Money()))],
            [.. varieties.Where(_ => Chance()).Select(variety => new AsIsPrice(variety.Id, Money(), Maybe(() => Number(1e6)))), new AsIsPrice(null, Money(), null)])
        {
            Setups = [.. Setups(lines, varieties, places)], Shifts = [.. Shifts(lines, settings)],
        };
    }

    private SizeClass[] Sizes()
    {
        double[] cuts = [.. Enumerable.Range(0, 4).Select(_ => Positive(100)).Distinct().Order()];
        return [.. Names(cuts.Length - 1).Select((name, at) => new SizeClass(
            new SizeClassId(name), Maybe(Name), cuts[at], at == cuts.Length - 2 && Chance() ? null : cuts[at + 1]))];
    }

    private Variety DrawVariety(string name) => new(
        new VarietyId(name), new MassLaw(-Number(10), Positive(5), Number(1)), Maybe(Pick<KeepClass>), Maybe(() => Positive(20)), Maybe(() => Number(2)),
        Chance() ? new MassLaw(-Number(10), Positive(5), Number(1)) : null);

    private Place DrawPlace(string name) => new(
        new PlaceId(name), Pick<PlaceKind>(), 1000 + random.Next(1000), Maybe(Celsius), Maybe(Percent), Maybe(Percent), Maybe(Percent), Money(), Money(), Money(),
        Maybe(() => random.Next(1, 20)));

    /// <summary>Rows of one lot: alike but for what may differ, in places that no room seals before, and never more than the place holds.</summary>
    private IEnumerable<LotRow> Rows(string name, Variety[] varieties, Place[] places, SeasonSettings settings)
    {
        LotRow model = new(
            new LotId(name), places[0].Id, varieties[random.Next(varieties.Length)].Id, Name(), settings.FirstWeek, 0, 1, Maybe(Pick<LotState>), null, null,
            Chance(), Maybe(Chance), Chance(), null, null, Maybe(Pick<SeedClass>), Maybe(() => Positive(200)), Maybe(() => Number(2)), Maybe(Day), Chance());
        foreach (Place place in places.Where(_ => Chance()))
        {
            double net = Positive(1e6), fresh = Share();
            yield return model with
            {
                // Long before the season, so that no room was sealed by then.
                Place = place.Id, Harvested = settings.AsOf.PlusDays(-random.Next(30, 90)), Bins = Number(300), Net = net, NetLow = Maybe(() => net * 0.9),
                NetHigh = Maybe(() => net * 1.1), FreshShare = Maybe(() => fresh), CrackShare = Maybe(() => 1 - fresh),
            };
        }
    }

    private Line DrawLine(string name) => new(
        new LineId(name), Pick<LineMode>(), Positive(10_000), Number(80), Number(40), Money(), Maybe(Money), Number(20), Number(5000), Number(4));

    private Product DrawProduct(string name, SizeClass[] sizes, CloveGrade[] grades) => Chance()
        ? new(new ProductId(name), ProductForm.Bulb, sizes[random.Next(sizes.Length)].Id.Text, Positive(50), Money(), random.Next(10), Chance())
        : new(new ProductId(name), ProductForm.Clove, grades[random.Next(grades.Length)].Id.Text, Positive(50), Money(), random.Next(10), Chance());

    private IEnumerable<SetupRow> Setups(Line[] lines, Variety[] varieties, Place[] places)
    {
        foreach (SetupKind kind in Enum.GetValues<SetupKind>().Where(_ => Chance()))
        {
            (string? from, string? to) = kind switch
            {
                SetupKind.Variety => (Maybe(() => varieties[0].Id.Text), Maybe(() => varieties[^1].Id.Text)),
                SetupKind.Organic => (Maybe(() => SetupRow.Conventional), Maybe(() => SetupRow.Organic)),
                SetupKind.Cuts => (Maybe(Name), Maybe(Name)),
                SetupKind.Travel => (Maybe(() => places[0].Id.Text), null),
                _ => ((string?)null, (string?)null),
            };
            yield return new SetupRow(kind, Chance() ? lines[0].Id : null, from, to, Number(1440), Money(), Maybe(Name));
        }
    }

    private IEnumerable<ShiftRow> Shifts(Line[] lines, SeasonSettings settings)
    {
        foreach (ShiftKind kind in Enum.GetValues<ShiftKind>().Where(_ => Chance()))
        {
            int start = random.Next(1440);
            yield return new ShiftRow(
                kind, Name(), kind != ShiftKind.Dock && Chance() ? lines[^1].Id : null, Maybe(() => Week(settings)), Maybe(() => (IsoDayOfWeek)random.Next(1, 8)), start,
                start + random.Next(1, 1441), kind == ShiftKind.Work ? Maybe(() => Number(1000)) : null);
        }
    }

    private OrderLine DrawOrder(string order, int line, Product[] products)
    {
        LocalDate due = Day();
        return new(
            new OrderId(order), $"{line}", Name(), products[random.Next(products.Length)].Id, due.PlusDays(-random.Next(10)), due, random.Next(10_000), Money(),
            Chance(), Money(), Money(), Chance(), Chance());
    }

    private MarketWeek DrawMarket(ProductId product, SeasonSettings settings)
    {
        double p50 = Number(1000);
        return new(product, Week(settings), Money(), Maybe(() => p50 / 2), p50, Maybe(() => p50 * 2));
    }

    private int Week(SeasonSettings settings) => random.Next(settings.Weeks);

    private LocalDate Day() => new LocalDate(2024, 1, 1).PlusDays(random.Next(-10_000, 10_000));

    private double Number(double below) => random.Next(4) switch
    {
        0 => random.Next((int)below),
        1 => random.Next((int)below) / 8.0,
        2 => random.NextDouble() * 1e-6,
        _ => random.NextDouble() * below,
    };

    private double Positive(double most) => Math.Max(Number(most), 1e-7);

    private double Share() => random.NextDouble();

    private double Percent() => 1.5 + random.NextDouble() * 98;

    private double Celsius() => -40 + random.NextDouble() * 100;

    private decimal Money() => random.Next(3) switch { 0 => 0, 1 => random.Next(100_000) / 100m, _ => (decimal)random.NextDouble() };

    private bool Chance() => random.Next(2) == 0;

    private T Pick<T>() where T : struct, Enum => Enum.GetValues<T>()[random.Next(Enum.GetValues<T>().Length)];

    private T? Maybe<T>(Func<T> draw) where T : struct => Chance() ? draw() : null;

    private string? Maybe(Func<string> draw) => Chance() ? draw() : null;

    private string[] Names(int count) => [.. Enumerable.Range(0, count).Select(at => Name() + at)];

    // The last letter is no space, because a name of spaces alone is no name.
    private string Name() => new string([.. Enumerable.Range(0, random.Next(6)).Select(_ => Letters[random.Next(Letters.Length)])]) + "x";
}
