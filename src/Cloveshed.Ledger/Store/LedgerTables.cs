using Microsoft.EntityFrameworkCore;

namespace Cloveshed.Ledger.Store;

/// <summary>
/// The schema, for any provider: texts, whole numbers, doubles, bytes and nothing that one database alone knows. It is here for
/// migrations; rows are read and written by prepared commands, which a ledger of a hundred thousand rows needs.
/// </summary>
internal sealed class LedgerTables(DbContextOptions<LedgerTables> options) : DbContext(options)
{
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<FactTable>(table =>
        {
            table.ToTable("facts").HasKey(row => row.Seq);
            table.Property(row => row.Seq).HasColumnName("seq").ValueGeneratedNever();
            table.Property(row => row.Id).HasColumnName("id").HasMaxLength(36).IsRequired();
            table.Property(row => row.Kind).HasColumnName("kind").HasMaxLength(40);
            table.Property(row => row.HappenedAt).HasColumnName("happened_at").HasMaxLength(33);
            table.Property(row => row.RecordedAt).HasColumnName("recorded_at").HasMaxLength(33);
            table.Property(row => row.SaidBy).HasColumnName("said_by").HasMaxLength(200);
            table.Property(row => row.Device).HasColumnName("device").HasMaxLength(200);
            table.Property(row => row.Place).HasColumnName("place").HasMaxLength(200);
            table.Property(row => row.Body).HasColumnName("body");
            table.Property(row => row.Corrects).HasColumnName("corrects").HasMaxLength(36);
            table.Property(row => row.Batch).HasColumnName("batch").HasMaxLength(36);
            table.Property(row => row.Prev).HasColumnName("prev").HasMaxLength(64);
            table.Property(row => row.Hash).HasColumnName("hash").HasMaxLength(64);
            table.HasIndex(row => row.Id).IsUnique().HasDatabaseName("facts_id");
            table.HasIndex(row => row.Kind).HasDatabaseName("facts_kind");
        });
        modelBuilder.Entity<HeadTable>(table =>
        {
            table.ToTable("ledger_head").HasKey(row => row.One);
            table.Property(row => row.One).HasColumnName("one").ValueGeneratedNever();
            table.Property(row => row.Seq).HasColumnName("seq");
            table.Property(row => row.Hash).HasColumnName("hash").HasMaxLength(64);
        });
        modelBuilder.Entity<DocumentTable>(table =>
        {
            table.ToTable("documents").HasKey(row => row.Sha256);
            table.Property(row => row.Sha256).HasColumnName("sha256").HasMaxLength(64);
            table.Property(row => row.Bytes).HasColumnName("bytes");
        });
        FoldsOfSeason(modelBuilder);
        FoldsOfDecisions(modelBuilder);
    }

    private static void FoldsOfSeason(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<SeasonFoldRow>(table =>
        {
            table.ToTable("seasons").HasKey(row => row.Opened);
            table.Property(row => row.Opened).HasColumnName("opened").HasMaxLength(36);
            table.Property(row => row.Settings).HasColumnName("settings");
        });
        modelBuilder.Entity<SeasonFileFold>(table =>
        {
            table.ToTable("season_files").HasKey(row => row.File);
            table.Property(row => row.File).HasColumnName("file").HasMaxLength(40);
            table.Property(row => row.Columns).HasColumnName("columns");
        });
        modelBuilder.Entity<SeasonRowFold>(table =>
        {
            table.ToTable("season_rows").HasKey(row => new { row.File, row.Row });
            table.Property(row => row.File).HasColumnName("file").HasMaxLength(40);
            table.Property(row => row.Row).HasColumnName("row");
            table.Property(row => row.Cells).HasColumnName("cells");
            table.Property(row => row.Fact).HasColumnName("fact").HasMaxLength(36);
            table.Property(row => row.Seq).HasColumnName("seq");
        });
    }

    /// <summary>Few rows each, written anew whenever one changes: each row is the state's record as JSON.</summary>
    private static void FoldsOfDecisions(ModelBuilder modelBuilder)
    {
        foreach (string name in RecordTables)
            modelBuilder.SharedTypeEntity<DecisionFold>(name, table =>
            {
                table.ToTable(name).HasKey(row => row.Ordinal);
                table.Property(row => row.Ordinal).HasColumnName("ordinal").ValueGeneratedNever();
                table.Property(row => row.Fact).HasColumnName("fact").HasMaxLength(36);
                table.Property(row => row.Record).HasColumnName("record");
            });
    }

    /// <summary>holds, plans, the jobs that are open and those that ended without a plan.</summary>
    internal static readonly string[] DecisionTables = ["holds", "plans", "plan_jobs", "plan_ends"];

    /// <summary>What the line has counted and is set to. Apart from decisions, because a count is long and a hold must not write it again.</summary>
    internal static readonly string[] LineTables = ["sizer_counts", "sizer_settings", "drum_settings"];

    /// <summary>All tables whose rows are a state's records.</summary>
    internal static IEnumerable<string> RecordTables => DecisionTables.Concat(LineTables);
}

internal sealed class FactTable
{
    public required long Seq { get; init; }
    public required string Id { get; init; }
    public required string Kind { get; init; }
    public required string HappenedAt { get; init; }
    public required string RecordedAt { get; init; }
    public required string SaidBy { get; init; }
    public required string Device { get; init; }
    public required string Place { get; init; }
    public required string Body { get; init; }
    public string? Corrects { get; init; }
    public required string Batch { get; init; }
    public required string Prev { get; init; }
    public required string Hash { get; init; }
}

/// <summary>One row: the last fact. A tail that is cut off the facts shows against it.</summary>
internal sealed class HeadTable
{
    public required int One { get; init; }
    public required long Seq { get; init; }
    public required string Hash { get; init; }
}

internal sealed class DocumentTable
{
    public required string Sha256 { get; init; }
    public required byte[] Bytes { get; init; }
}

/// <summary>One row: the current season.</summary>
internal sealed class SeasonFoldRow
{
    public required string Opened { get; init; }
    public required string Settings { get; init; }
}

internal sealed class SeasonFileFold
{
    public required string File { get; init; }
    public required string Columns { get; init; }
}

/// <summary>Cells are null where the row was dropped: its number stays taken.</summary>
internal sealed class SeasonRowFold
{
    public required string File { get; init; }
    public required int Row { get; init; }
    public string? Cells { get; init; }
    public string? Fact { get; init; }
    public required long Seq { get; init; }
}

internal sealed class DecisionFold
{
    public required int Ordinal { get; init; }
    public required string Fact { get; init; }
    public required string Record { get; init; }
}
