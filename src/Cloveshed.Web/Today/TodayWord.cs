namespace Cloveshed.Web.Today;

/// <summary>What Today says, by key; the words are in Today/words.en.txt and words.es.txt.</summary>
public enum TodayWord
{
    Title, Lead,

    // Notes
    NotesHead, NoteText, NoteKeep, NoteKept, NoteEmpty,
}
