using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>setups.csv: minutes and money from one run of a line to the next, cleaning before food, and bins' travel. An empty name stands for any.</summary>
internal static class SetupsFile
{
    public static readonly FileLayout Layout = new("setups.csv", needed: false, rowLimit: 10_000);
    private static readonly Column Kind = Layout.NeededText("kind");
    private static readonly Column Line = Layout.Text("line");
    private static readonly Column From = Layout.Text("from");
    private static readonly Column To = Layout.Text("to");
    private static readonly Column Minutes = Layout.NeededNumber("minutes", Bounds.Minutes);
    private static readonly Column Cost = Layout.Number("cost", Bounds.Money);
    private static readonly Column Step = Layout.Text("step");

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Kind, Line, From, To);
        Cells cells = table.Cells;
        while (table.Next())
        {
            SetupKind? kind = cells.Word(Kind, Words.SetupKinds);
            string? line = cells.Text(Line), from = cells.Text(From), to = cells.Text(To);
            draft.LineNames.Require(table, Line, line);
            if (kind is { } of)
            {
                Name(table, draft, of, From, from);
                if (of is SetupKind.Travel && to is not null)
                    table.Fault(FaultRule.NotOfKind, To, Words.SetupKinds.TextOf(of));
                else if (of is not SetupKind.Travel)
                    Name(table, draft, of, To, to);
            }

            keys.Take(table, kind is { } known ? Words.SetupKinds.TextOf(known) : null, line, from, to);
            SetupRow row = new(kind ?? default, line is null ? null : new LineId(line), from, to, cells.Number(Minutes) ?? 0, cells.Money(Cost) ?? 0, cells.Text(Step));
            if (table.RowSound)
                draft.Setups.Add(row);
        }
    }

    /// <summary>What a row of a kind may name: nothing, what another file has, or what it likes.</summary>
    private static void Name(Table table, SeasonDraft draft, SetupKind kind, Column column, string? name)
    {
        if (name is null)
            return;
        string word = Words.SetupKinds.TextOf(kind);
        switch (kind)
        {
            case SetupKind.Variety when draft.VarietyNames.Lacks(name):
                table.Fault(FaultRule.NameOfKind, column, word, "varieties.csv", "variety");
                break;
            case SetupKind.Travel when draft.PlaceNames.Lacks(name):
                table.Fault(FaultRule.NameOfKind, column, word, "places.csv", "place");
                break;
            case SetupKind.Organic when name is not (SetupRow.Organic or SetupRow.Conventional):
                table.Fault(FaultRule.OrganicWord, column, SetupRow.Organic, SetupRow.Conventional);
                break;
            case SetupKind.Cleaning:
                table.Fault(FaultRule.NotOfKind, column, word);
                break;
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (SetupRow row in season.Setups)
            text.Word(Words.SetupKinds, (SetupKind?)row.Kind).Text(row.Line?.Text).Text(row.From).Text(row.To).Number(row.Minutes).Money(row.Cost).Text(row.Step).EndRow();
        return text.ToBytes();
    }
}
