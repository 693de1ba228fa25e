using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Folds;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>A batch that may be taken: the facts that are new, with their places in the chain, and what the shed is with them.</summary>
internal sealed record CheckedBatch(IReadOnlyList<StoredFact> New, ShedFold Fold, ShedState State, IReadOnlyList<(Guid Id, long Seq)> Answer);

/// <summary>Holds a batch against the ledger as it is, whole: either all of it may be taken, or it says why not.</summary>
internal static class BatchCheck
{
    /// <summary>A season of a thousand faults is told by its first ones.</summary>
    private const int MostRefusals = 50;

    /// <summary>The facts of a batch in their stored form, or what is wrong with them by themselves.</summary>
    public static (IReadOnlyList<FormedFact> Facts, IReadOnlyList<Refusal> Refusals) Form(
        IReadOnlyList<NewFact> facts, IReadOnlyDictionary<string, byte[]> documents, DateTimeOffset clock, TextLanguage language)
    {
        List<Refusal> refusals = [];
        foreach ((string digest, byte[] bytes) in documents)
            if (FactChain.Digest(bytes) != digest)
                refusals.Add(RefusalTexts.Of(facts.Count > 0 ? facts[0].Id : Guid.Empty, RefusalTexts.DocumentDigest, language, digest));
        List<FormedFact> forms = [];
        foreach (NewFact fact in facts)
        {
            (FormedFact? form, Refusal? refusal) = FactForm.Of(fact, clock, language);
            if (form is not null)
                forms.Add(form);
            else if (refusals.Count < MostRefusals)
                refusals.Add(refusal!);
        }
        return (forms, refusals);
    }

    /// <param name="now">The shed by all facts so far.</param>
    /// <param name="find">A fact that was taken before, by its id.</param>
    /// <param name="isCorrected">Whether a fact about a room that was taken before corrects that one.</param>
    /// <param name="hasDocument">Whether a document of that digest is stored or handed in.</param>
    public static (CheckedBatch? Batch, IReadOnlyList<Refusal> Refusals) Check(
        IReadOnlyList<FormedFact> forms, ShedState now, DateTimeOffset clock, TextLanguage language, Func<Guid, StoredFact?> find, Func<Guid, bool> isCorrected, Func<string, bool> hasDocument)
    {
        ShedFold fold = new(now);
        Dictionary<Guid, StoredFact> taken = [];
        List<StoredFact> chained = [];
        List<(Guid, long)> answer = [];
        HashSet<Guid> correctedHere = [];
        FactMatter matter = new(fold, language, hasDocument, id => taken.TryGetValue(id, out StoredFact? here) ? here : find(id), id => correctedHere.Contains(id) || isCorrected(id));
        string recorded = StoredFact.TimeText(clock.ToUniversalTime()), prev = now.Head.Hash;
        foreach (FormedFact form in forms)
        {
            if ((taken.TryGetValue(form.Id, out StoredFact? before) ? before : form.Fresh ? null : find(form.Id)) is { } known)
            {
                if (!FactForm.Same(known, form.Stored))
                    return (null, [RefusalTexts.Of(form.Id, RefusalTexts.FactChanged, language, form.Id)]);
                answer.Add((form.Id, known.Seq));
                continue;
            }
            Body body = Body.Of(form.Stored.Body);
            if (matter.Against(form, body) is { } refusal)
                return (null, [refusal]);
            StoredFact unhashed = form.Stored with
            {
                Seq = now.Head.Seq + chained.Count + 1, RecordedAt = recorded, Batch = chained.Count == 0 ? form.Stored.Id : chained[0].Id, Prev = prev,
            };
            StoredFact stored = unhashed with { Hash = FactChain.Hash(unhashed) };
            fold.Apply(stored, body);
            prev = stored.Hash;
            chained.Add(stored);
            taken.Add(form.Id, stored);
            if (form.Corrects is { } corrected)
                correctedHere.Add(corrected);
            answer.Add((form.Id, stored.Seq));
        }
        ShedState state = fold.Finished(chained.Count == 0 ? now.Head : new LedgerHead(chained[^1].Seq, prev));
        if (fold.Season.Changed && state.Text!.ReadIn(language) is { Season: null } faulty)
            return (null, [.. faulty.Faults.Take(MostRefusals).Select(fault => OfSeason(fault, state, taken, forms))]);
        return (new CheckedBatch(chained, fold, state, answer), []);
    }

    /// <summary>A fault of the season that would be, on the fact that set the row where that is one of the batch.</summary>
    private static Refusal OfSeason(Fault fault, ShedState state, Dictionary<Guid, StoredFact> taken, IReadOnlyList<FormedFact> forms)
    {
        Guid id = forms.First(form => form.Stored.Kind is FactKinds.SeasonOpened or FactKinds.SeasonChanged || FactKinds.OfRow(form.Stored.Kind) is not null).Id;
        if (fault.Line is { } line && SeasonTable.Of(fault.File) is { } table && state.Files().TryGetValue(fault.File, out ReadOnlyMemory<byte> bytes))
        {
            int at = table.Read(bytes).Rows.ToList().FindIndex(row => row.Line == line);
            if (at >= 0 && state.Rows!.Of(fault.File).ElementAtOrDefault(at) is { } row && taken.ContainsKey(row.Fact))
                id = row.Fact;
        }
        return new Refusal(id, "season-" + Kebab(fault.Rule.ToString()), (fault with { Remedy = "" }).ToString().TrimEnd(), fault.Remedy);
    }

    private static string Kebab(string name) =>
        string.Concat(name.Select((letter, at) => char.IsUpper(letter) && at > 0 ? "-" + char.ToLowerInvariant(letter) : char.ToLowerInvariant(letter).ToString()));
}
