using Cloveshed.Core.Cuts;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Line;

/// <summary>What is done with a size class on the sizer.</summary>
public enum ClassUse
{
    /// <summary>It has a box of its own.</summary>
    Own,

    /// <summary>Its bulbs go into the box of the next smaller class that has one, under that name.</summary>
    WithSmaller,

    /// <summary>Not packed: the smallest are left under the first cut, the largest taken off the top.</summary>
    NotPacked,
}

/// <summary>A setting as a hand makes it: for each class of the chart, small to large, what is done with it and from which weight on.</summary>
/// <param name="CutG">Of a class that is merged its cut is not asked; of the first not packed at the top it is where the top is taken off.</param>
public sealed record SizerWish(IReadOnlyList<ClassUse> Uses, IReadOnlyList<double> CutG)
{
    /// <summary>Every class by itself, at these cuts.</summary>
    public static SizerWish Plain(IReadOnlyList<double> cutG) => new([.. cutG.Select(_ => ClassUse.Own)], cutG);

    /// <summary>A setting that was made as boxes.</summary>
    /// <param name="otherwise">Cuts of the classes that have no box.</param>
    public static SizerWish Of(IReadOnlyList<Box> boxes, double? overG, IReadOnlyList<double> otherwise)
    {
        var uses = new ClassUse[otherwise.Count];
        double[] cuts = [.. otherwise];
        Array.Fill(uses, ClassUse.NotPacked);
        foreach (Box box in boxes)
        {
            (uses[box.Class], cuts[box.Class]) = (ClassUse.Own, box.MinG);
            for (int k = box.Class + 1; k <= box.Last; k++)
                uses[k] = ClassUse.WithSmaller;
        }

        if (overG is { } over && boxes.Count > 0 && boxes[^1].Last + 1 < cuts.Length)
            cuts[boxes[^1].Last + 1] = over;
        return new(uses, cuts);
    }

    /// <summary>
    /// The boxes. A class between two boxes is not left out by a sizer: it goes with the smaller one. One that is merged under the first
    /// box is not packed.
    /// </summary>
    public (IReadOnlyList<Box> Boxes, double? OverG) Boxes
    {
        get
        {
            int last = -1;
            for (int k = 0; k < Uses.Count; k++)
                last = Uses[k] == ClassUse.Own || (Uses[k] == ClassUse.WithSmaller && last >= 0 && last == k - 1) ? k : last;
            var boxes = new List<Box>();
            for (int k = 0; k <= last; k++)
            {
                if (Uses[k] == ClassUse.Own)
                    boxes.Add(new Box(k, k, CutG[k]));
                else if (boxes.Count > 0)
                    boxes[^1] = boxes[^1] with { Last = k };
            }

            return (boxes, last + 1 < Uses.Count && boxes.Count > 0 ? CutG[last + 1] : null);
        }
    }

    /// <summary>The first class whose cut lies under the one before it; null where cuts rise as they must.</summary>
    public int? FirstOutOfOrder
    {
        get
        {
            (IReadOnlyList<Box> boxes, double? over) = Boxes;
            for (int at = 1; at < boxes.Count; at++)
            {
                if (boxes[at].MinG < boxes[at - 1].MinG)
                    return boxes[at].Class;
            }

            return over < boxes[^1].MinG ? boxes[^1].Last + 1 : null;
        }
    }
}
