namespace Cloveshed.Web.Dock;

/// <summary>What Dock says, by key; the words are in Dock/words.en.txt and words.es.txt.</summary>
public enum DockWord
{
    Title, Lead,
}
