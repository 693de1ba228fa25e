using Cloveshed.Core.Cuts;
using Cloveshed.Core.Line;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.Core.Tests.Lots;

namespace Cloveshed.Core.Tests.Line;

/// <summary>Settings as a hand makes them: boxes, merged classes, classes left out, and the best within them.</summary>
public class SizerWishTests
{
    private const ClassUse Own = ClassUse.Own, Merge = ClassUse.WithSmaller, None = ClassUse.NotPacked;

    private static readonly SizeClass[] Chart = [new(new("a"), null, 40, 50), new(new("b"), null, 50, 60), new(new("c"), null, 60, 70), new(new("d"), null, 70, null)];

    public static TheoryData<ClassUse[], (int, int)[], double?> Wishes => new()
    {
        { [Own, Own, Own, Own], [(0, 0), (1, 1), (2, 2), (3, 3)], null },
        { [None, Own, Merge, Own], [(1, 2), (3, 3)], null },
        { [Own, None, Own, Merge], [(0, 1), (2, 3)], null }, // what lies between two boxes goes with the smaller
        { [Own, Own, None, None], [(0, 0), (1, 1)], 50 },
        { [Merge, Own, Own, None], [(1, 1), (2, 2)], 70 },
        { [None, None, None, None], [], null },
    };

    [Theory, MemberData(nameof(Wishes))]
    public void A_wish_is_boxes(ClassUse[] uses, (int, int)[] boxes, double? over)
    {
        (IReadOnlyList<Box> found, double? top) = new SizerWish(uses, [20, 35, 50, 70]).Boxes;
        Assert.Equal(boxes, found.Select(box => (box.Class, box.Last)));
        Assert.Equal(over, top);
        if (found.Count > 0)
            Assert.Equal((found, top), (SizerWish.Of(found, top, [20, 35, 50, 70]).Boxes.Boxes, SizerWish.Of(found, top, [20, 35, 50, 70]).Boxes.OverG), new SameBoxes());
    }

    [Fact]
    public void Cuts_that_do_not_rise_are_found_among_those_that_count()
    {
        Assert.Null(new SizerWish([Own, Merge, Own, Own], [20, 90, 50, 70]).FirstOutOfOrder);
        Assert.Equal(2, new SizerWish([Own, Own, Own, Own], [20, 60, 50, 70]).FirstOutOfOrder);
        Assert.Equal(3, new SizerWish([Own, Own, Own, None], [20, 30, 80, 70]).FirstOutOfOrder);
    }

    [Fact]
    public void The_best_within_a_wish_holds_and_no_other_setting_of_it_that_holds_earns_more()
    {
        LotWeights weights = new(WeightsFrom.Law, new([new(1, Math.Log(55), 0.35)]), Allometry.Of([], SmallSeason.Law), []);
        CutQuestion question = new(weights.Curve, SmallSeason.Law with { S = 0.05 }, SmallSeason.Law, Chart, [1, 1.2, 1.5, 1.6], 0.1, 0.5);
        CutTable table = CutTable.Of(question.Curve, question.Law, Chart, question.StepG);
        var random = new Random(11);
        foreach (ClassUse[] uses in new[] { new[] { Own, Own, Own, Own }, [None, Own, Merge, Own], [Own, Own, Own, None], [None, Own, Merge, Merge] })
        {
            SizerWish wish = new(uses, [20, 35, 55, 85]);
            (IReadOnlyList<Box> boxes, double? over) = SizerLooking.Best(question, table, wish);
            SettingSeen best = SizerLooking.At(question, table, weights, boxes, over, OffBox.Refused);
            Assert.All(best.Setting.Boxes, box => Assert.True(box.Holds));
            Assert.All(boxes, box => Assert.Equal(Own, uses[box.Class]));
            double most = 0;
            for (int trial = 0; trial < 4000; trial++)
            {
                double[] cuts = [.. Enumerable.Range(0, 4).Select(_ => 10 + random.Next(0, 260) * 0.5).Order()];
                (IReadOnlyList<Box> tried, double? top) = new SizerWish(uses, cuts).Boxes;
                most = Math.Max(most, SizerLooking.At(question, table, weights, tried, top, OffBox.Refused).Setting.Value);
            }

            Assert.InRange(most, 0.3, best.Setting.Value + 1e-9);
        }
    }

    [Fact]
    public void A_box_off_tolerance_is_paid_as_the_smaller_class_or_not_at_all()
    {
        LotWeights weights = new(WeightsFrom.Law, new([new(1, Math.Log(55), 0.35)]), Allometry.Of([], SmallSeason.Law), []);
        CutQuestion question = new(weights.Curve, SmallSeason.Law, SmallSeason.Law, Chart, [1, 1.2, 1.5, 1.6], 0.01, 0.5);
        CutTable table = CutTable.Of(question.Curve, question.Law, Chart, question.StepG);
        IReadOnlyList<Box> boxes = SizerWish.Plain([20, 35, 55, 85]).Boxes.Boxes;
        Setting paid = SizerLooking.At(question, table, weights, boxes, null, OffBox.PaidAsSmaller).Setting, refused = SizerLooking.At(question, table, weights, boxes, null, OffBox.Refused).Setting;
        Assert.All(paid.Boxes, box => Assert.False(box.Holds));
        Assert.Equal([0, 1, 1.2, 1.5], paid.Boxes.Select(box => box.Paid));
        Assert.Equal(0, refused.Value);
        Assert.Equal(paid.Boxes.Sum(box => box.Share * box.Paid), paid.Value, 1e-12);
    }

    private sealed class SameBoxes : IEqualityComparer<(IReadOnlyList<Box> Boxes, double? Over)>
    {
        public bool Equals((IReadOnlyList<Box> Boxes, double? Over) x, (IReadOnlyList<Box> Boxes, double? Over) y) => x.Boxes.SequenceEqual(y.Boxes) && x.Over == y.Over;

        public int GetHashCode((IReadOnlyList<Box> Boxes, double? Over) of) => of.Boxes.Count;
    }
}
