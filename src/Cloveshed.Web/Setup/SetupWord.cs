namespace Cloveshed.Web.Setup;

/// <summary>What Setup says, by key; the words are in Setup/words.en.txt and words.es.txt.</summary>
public enum SetupWord
{
    Title, Lead,
}
