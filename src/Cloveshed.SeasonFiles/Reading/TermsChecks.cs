using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>Buyers' terms against each other: whether each row comes to a price in each of its weeks, and what they come to as order lines.</summary>
internal static class TermsChecks
{
    /// <summary>Whether a file says anything beneath its header row.</summary>
    public static bool HasRows(ReadOnlyMemory<byte> bytes)
    {
        CsvRows rows = new(bytes);
        int filled = 0;
        while (filled < 2 && rows.Next())
            filled += rows.IsBlank ? 0 : 1;
        return filled > 1;
    }

    /// <summary>Lowers the terms of a season that has them, as far as its files are sound enough to say what they come to.</summary>
    public static void Lower(SeasonDraft draft)
    {
        if (draft.Frame.Settings is not { Contract: > 1 } settings)
            return;
        LoweredTerms lowered = TermsLowering.Of(settings, draft.Terms);
        // A row that was refused leaves a hole, which is not to be a second fault.
        foreach (TermsFault fault in lowered.Faults.Where(fault => !(fault.Kind == TermsFaultKind.NoListPrice && draft.PricesLost) && !(fault.Kind == TermsFaultKind.NoFreight && draft.FreightLost)))
            Report(draft, settings, fault);
        foreach (Promotion promotion in draft.Faults.Count == 0 ? lowered.IdlePromotions : [])
            draft.Faults.Warn(WarningRule.PromotionIdle, PromotionsFile.Layout.Name, draft.Promotions.First(one => one.Row == promotion).Line, PromotionsFile.Name.Name, promotion.Name);
        draft.Lowered = lowered;
    }

    private static void Report(SeasonDraft draft, SeasonSettings settings, TermsFault fault)
    {
        (BuyerProgram? program, int programLine) = fault.OfProgram ? draft.Programs[fault.Row] : default;
        (OrderTerms? order, int orderLine) = fault.OfProgram ? default : draft.OrderTerms[fault.Row];
        string file = fault.OfProgram ? ProgramsFile.Layout.Name : OrdersFile.Layout.Name, week = IsoDate.Text(settings.Monday(fault.Week)), product = (program?.Product ?? order!.Line.Product).Text;
        string? list = (fault.OfProgram ? program!.PriceList : order!.PriceList)?.Text, to = (fault.OfProgram ? program!.Destination : order!.Destination)?.Text;
        int line = fault.OfProgram ? programLine : orderLine;
        switch (fault.Kind)
        {
            case TermsFaultKind.NoListPrice:
                draft.Faults.Add(FaultRule.NoListPrice, file, line, ProgramsFile.PriceList.Name, list, product, week);
                break;
            case TermsFaultKind.NoFreight:
                draft.Faults.Add(FaultRule.NoFreight, file, line, ProgramsFile.Destination.Name, to, product);
                break;
            case TermsFaultKind.BelowNothing:
                PriceOrigin origin = fault.Origin!;
                draft.Faults.Add(
                    FaultRule.BelowNothing, file, line, (list is null ? ProgramsFile.Price : ProgramsFile.PriceList).Name, list ?? NumberText.Of(origin.Price), week, NumberText.Of(origin.Price),
                    NumberText.Of(origin.Promotions.Sum(one => one.Cut)), NumberText.Of(origin.Freight ?? 0));
                break;
            default:
                draft.Faults.Add(FaultRule.OrderNameTaken, file, line, ProgramsFile.Program.Name, program!.Program.Text, TermsLowering.OrderOf(program.Program, settings, fault.Week).Text);
                break;
        }
    }
}
