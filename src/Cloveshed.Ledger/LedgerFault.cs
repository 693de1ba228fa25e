using Cloveshed.Ledger.Store;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger;

/// <summary>Why a ledger cannot be opened, read or written.</summary>
public enum LedgerFaultKind
{
    FolderMissing, NotAnAddress, NotYetServed, Missing, Exists, CannotOpen, NotALedger, NewerProgram, Corrupt, DiskFull, ReadOnly, Locked, WriteFailed, Refused, Unproven,
}

/// <summary>Something outside the facts keeps the ledger from its work; what was taken before is as it was. The message ends with what to do.</summary>
public sealed class LedgerFault : Exception
{
    public LedgerFault(LedgerFaultKind kind, string place, string detail = "", Exception? inner = null)
        : base(LedgerFaultTexts.Say(kind, TextLanguage.English, place, detail), inner) => (Kind, Place, Detail) = (kind, place, detail);

    public LedgerFaultKind Kind { get; }

    /// <summary>The file or address.</summary>
    public string Place { get; }

    /// <summary>What the database or system said; empty where the kind says it all.</summary>
    public string Detail { get; }

    /// <summary>What is wrong and what to do, in a language.</summary>
    public string Say(TextLanguage language) => LedgerFaultTexts.Say(Kind, language, Place, Detail);
}
