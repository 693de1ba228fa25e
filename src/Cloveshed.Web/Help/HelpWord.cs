namespace Cloveshed.Web.Help;

/// <summary>What the help says around the manual's pages, by key; the words are in Help/words.en.txt and words.es.txt.</summary>
public enum HelpWord
{
    Title, Lead, Places, More, OnlyEnglish, ToIndex, ToPlace,
}
