namespace Cloveshed.Web.Plan;

/// <summary>What Plan says, by key; the words are in Plan/words.en.txt and words.es.txt.</summary>
public enum PlanWord
{
    Title, Lead,
}
