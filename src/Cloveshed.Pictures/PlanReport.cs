using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Board;
using Cloveshed.Pictures.Flow;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Pictures.Look;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Promise;
using Cloveshed.Pictures.Reading;
using Cloveshed.Pictures.Sections;

namespace Cloveshed.Pictures;

/// <summary>
/// The report of a season plan: one self-contained HTML page with nothing to fetch and no script, to read on any screen,
/// to print, and to take to a meeting. Every number in it is in the season or the answer, or a sum of such.
/// </summary>
public static class PlanReport
{
    /// <summary>Lots on the season board and bars on the keeping chart before "the rest": what one sheet of paper holds.</summary>
    private const int BoardLots = 14;
    private const int KeepingBars = 24;

    public static string Render(Season season, PlanAnswer answer, ReportOptions options)
    {
        var reader = new Reader(season.Settings, options);
        IReadOnlyList<OrderOutcome> orders = OrderOutcome.All(season, answer);
        PoundFlowFacts flow = PoundFlowFacts.From(season, answer, reader);
        var page = new MarkupText();
        page.Trusted("<!DOCTYPE html>\n").Open("html", ("lang", reader.LanguageTag)).Open("head").NewLine();
        page.Empty("meta", ("charset", "utf-8")).Empty("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1")).NewLine();
        page.Empty("meta", ("name", "color-scheme"), ("content", "light dark"));
        // The page fetches nothing, and says so to the browser: fonts are data, styles are inline, scripts are refused.
        page.Empty("meta", ("http-equiv", "Content-Security-Policy"), ("content", "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:")).NewLine();
        page.Empty("link", ("rel", "icon"), ("href", "data:,"));
        page.Element("title", reader.Say(Say.PageTitle, season.Settings.Name)).NewLine();
        page.Open("style").Trusted(Stylesheet.Report).Close("style").Close("head").NewLine();
        page.Open("body").Element("a", reader.Say(Say.SkipToContent), ("class", "skip"), ("href", "#first")).NewLine();
        page.Add(HeadSection.Write(season, answer, orders, flow, reader));
        page.Add(Contents(reader));
        page.Open("main").NewLine();
        page.Add(FirstRuns.Write(season, answer, reader));
        page.Add(Board(SeasonBoardFacts.From(season, answer), reader));
        page.Add(Keeping(KeepingFacts.From(season, answer), reader));
        page.Add(Promise(PromiseFacts.From(season, answer), reader));
        page.Add(Flow(flow, reader));
        page.Add(HeadSection.Money(answer, reader));
        page.Add(OrdersSection.Write(season, orders, reader));
        page.Add(SizesSection.Write(season, answer, reader));
        page.Add(SeedSection.Write(season, answer, reader));
        page.Add(RoomsSection.Write(season, answer, reader));
        page.Add(WorthsSection.Write(season, answer, reader));
        page.Add(BasisSection.Write(answer, reader));
        page.Close("main").NewLine();
        page.Open("footer").Element("p", reader.Say(Say.Foot, answer.Summary.Version, answer.Summary.InputDigest)).Close("footer");
        return page.Close("body").Close("html").NewLine().ToString();
    }

    private static MarkupText Contents(Reader reader)
    {
        (string Id, Say Title)[] parts =
        [
            ("first", Say.FirstTitle), ("board", Say.BoardName), ("keeping", Say.KeepingName), ("promise", Say.PromiseName), ("flow", Say.FlowTitle), ("money", Say.MoneyTitle),
            ("orders", Say.OrdersTitle), ("sizes", Say.SizesTitle), ("seed", Say.SeedTitle), ("rooms", Say.RoomsTitle), ("worths", Say.WorthsTitle), ("basis", Say.BasisTitle),
        ];
        var contents = new MarkupText();
        contents.Open("nav", ("class", "contents"), ("aria-label", reader.Say(Say.Contents))).Open("ul");
        foreach ((string id, Say title) in parts)
        {
            contents.Open("li").Element("a", reader.Say(title), ("href", "#" + id)).Close("li");
        }
        return contents.Close("ul").Close("nav").NewLine();
    }

    private static MarkupText Board(SeasonBoardFacts facts, Reader reader)
    {
        Picture whole = SeasonBoard.Draw(facts, BoardSize.Thin, reader);
        Picture top = SeasonBoard.Draw(facts.Top(BoardLots), BoardSize.Page, reader);
        MarkupText section = Section.Begin("board", reader.Say(Say.BoardName), "wide");
        section.Lead(facts.Lots.Count > BoardLots ? reader.Say(Say.BoardLeadTop, BoardLots, facts.Lots.Count) : reader.Say(Say.BoardLead));
        section.Add(Legends.Board(reader)).Add(top.WriteDrawing());
        section.Element("p", whole.Summary, ("class", "words"));
        if (facts.Lots.Count > BoardLots)
        {
            section.Fold(reader.Say(Say.BoardAllFold, facts.Lots.Count), whole.WriteDrawing());
        }
        return section.Behind(whole, "board", reader).End();
    }

    private static MarkupText Keeping(KeepingFacts facts, Reader reader)
    {
        Picture whole = KeepingChart.Draw(facts, reader);
        Picture top = KeepingChart.Draw(facts with { Bars = [.. facts.Bars.Take(KeepingBars)] }, reader);
        MarkupText section = Section.Begin("keeping", reader.Say(Say.KeepingName), "wide");
        section.Lead(reader.Say(Say.KeepingLead)).Add(Legends.Keeping(reader)).Add(top.WriteDrawing());
        section.Element("p", whole.Summary, ("class", "words"));
        if (facts.Bars.Count > KeepingBars)
        {
            section.Fold(reader.Say(Say.KeepingRestFold, facts.Bars.Count - KeepingBars),
                KeepingChart.Draw(facts with { Bars = [.. facts.Bars.Skip(KeepingBars)] }, reader).WriteDrawing());
        }
        return section.Behind(whole, "keeping", reader).End();
    }

    private static MarkupText Promise(PromiseFacts facts, Reader reader)
    {
        Picture picture = PromiseStrip.Draw(facts, reader);
        MarkupText section = Section.Begin("promise", reader.Say(Say.PromiseName), "wide");
        section.Lead(reader.Say(Say.PromiseLead)).Add(Legends.Promise(reader));
        foreach ((ProductForm form, Say name) in new[] { (ProductForm.Bulb, Say.PromiseBulbs), (ProductForm.Clove, Say.PromiseCloves) })
        {
            PromiseFacts part = facts with { Rows = [.. facts.Rows.Where(r => r.Form == form)] };
            if (part.Rows.Count > 0)
            {
                section.Element("h3", reader.Say(name)).Add(PromiseStrip.Draw(part, reader).WriteDrawing());
            }
        }
        return section.Element("p", picture.Summary, ("class", "words")).Behind(picture, "promise", reader).End();
    }

    private static MarkupText Flow(PoundFlowFacts facts, Reader reader)
    {
        Picture picture = PoundFlow.Draw(facts, reader);
        MarkupText section = Section.Begin("flow", reader.Say(Say.FlowTitle), "wide");
        section.Lead(PoundFlow.Closing(facts, reader)).Add(picture.WriteDrawing());
        return section.Behind(picture, "flow", reader).End();
    }
}
