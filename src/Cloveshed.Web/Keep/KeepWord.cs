namespace Cloveshed.Web.Keep;

/// <summary>What Keep says, by key; the words are in Keep/words.en.txt and words.es.txt.</summary>
public enum KeepWord
{
    Title, Lead,
}
