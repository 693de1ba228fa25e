using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Since;

/// <summary>What happened since a plan's basis, in words.</summary>
internal static class SinceWords
{
    /// <summary>"Order lines: 2 new, 1 changed".</summary>
    public static string Told(SinceCount count, Words<PlanWord> words, Reader reader)
    {
        List<string> parts = [];
        void Part(int number, PlanWord word)
        {
            if (number > 0)
            {
                parts.Add(words.Say(word, reader.Number(number, 0)));
            }
        }

        Part(count.New, PlanWord.SinceNew);
        Part(count.Changed, PlanWord.SinceChanged);
        Part(count.Gone, count.Noun == PlanSince.Hold ? PlanWord.SinceLifted : PlanWord.SinceGone);
        return $"{words[Noun(count.Noun)]}: {string.Join(", ", parts)}";
    }

    private static PlanWord Noun(string noun) => noun switch
    {
        PlanSince.Hold => PlanWord.NounHold,
        PlanSince.Season => PlanWord.NounSeason,
        PlanSince.Look => PlanWord.NounLook,
        "size-class" => PlanWord.NounSizeClass,
        "variety" => PlanWord.NounVariety,
        "place" => PlanWord.NounPlace,
        "place-week" => PlanWord.NounPlaceWeek,
        "lot" => PlanWord.NounLot,
        "sample" => PlanWord.NounSample,
        "yield" => PlanWord.NounYield,
        "line" => PlanWord.NounLine,
        PlanSince.Sizer => PlanWord.NounSizer,
        "line-week" => PlanWord.NounLineWeek,
        "people-week" => PlanWord.NounPeopleWeek,
        "clove-grade" => PlanWord.NounCloveGrade,
        "product" => PlanWord.NounProduct,
        "stock" => PlanWord.NounStock,
        "sealed-room" => PlanWord.NounSealedRoom,
        "order-line" => PlanWord.NounOrderLine,
        "market-week" => PlanWord.NounMarketWeek,
        "seed-need" => PlanWord.NounSeedNeed,
        "as-is-price" => PlanWord.NounAsIsPrice,
        "list-price" => PlanWord.NounListPrice,
        "freight" => PlanWord.NounFreight,
        "program" => PlanWord.NounProgram,
        "promotion" => PlanWord.NounPromotion,
        _ => throw new ArgumentOutOfRangeException(nameof(noun), noun, "A kind of fact without a word."),
    };
}
