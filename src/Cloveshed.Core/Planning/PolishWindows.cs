namespace Cloveshed.Core.Planning;

/// <summary>Which choices of the polish are decided anew together while the others stay as they are: weeks one after another, a line's, or some lots'.</summary>
internal static class PolishWindows
{
    /// <summary>[neighbourhood] what may change in it; the larger the size, the more.</summary>
    internal static IEnumerable<Func<PolishChoice, bool>> Of(PlanningInstance instance, int size)
    {
        int weeks = instance.Weeks - instance.AsOf, half = Math.Max(1, size / 2);
        for (int from = instance.AsOf; from == instance.AsOf || from + half < instance.Weeks; from += half)
        {
            int first = from;
            yield return c => c.Week >= first && c.Week < first + size;
        }
        if (weeks <= size) yield break;
        int lots = Math.Max(1, instance.Lots.Length * size / weeks);
        for (int from = 0; from < instance.Lots.Length; from += lots)
        {
            int first = from;
            yield return c => c.Kind switch
            {
                ChoiceKind.Run => c.A < 0 || (c.A >= first && c.A < first + lots),
                ChoiceKind.Finish => instance.Rows[c.A].Lot is var lot && lot >= first && lot < first + lots,
                _ => true,
            };
        }
        for (int i = 0; i < instance.Lines.Length; i++)
        {
            int line = i;
            yield return c => c.Kind != ChoiceKind.Run || c.B == line;
        }
    }
}
