using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Answers;

/// <summary>The answer's files about what stands where, and what it is worth: paths, shares, as-is, keeps, moves, rooms, worths.</summary>
internal static class StandingFiles
{
    public static readonly AnswerFile<PathWeek> Paths = MakePaths();
    public static readonly AnswerFile<LotShare> Shares = MakeShares();
    public static readonly AnswerFile<AsIsRow> AsIs = MakeAsIs();
    public static readonly AnswerFile<KeepRow> Keeps = MakeKeeps();
    public static readonly AnswerFile<MoveRow> Moves = MakeMoves();
    public static readonly AnswerFile<RoomRow> Rooms = MakeRooms();
    public static readonly AnswerFile<WorthRow> Worths = MakeWorths();

    private static AnswerFile<PathWeek> MakePaths()
    {
        FileLayout file = Layout("paths.csv");
        Column path = file.NeededText("path"), lot = file.NeededText("lot"), from = file.NeededText("from_place"), week = file.NeededDate("week"),
            place = file.NeededText("place"), ratio = file.NeededNumber("mass_ratio", Bounds.Any), fresh = file.NeededNumber("fresh_share", Bounds.Any),
            crack = file.NeededNumber("crack_share", Bounds.Any), life = file.NeededNumber("life_used", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Text(row.Path).Text(row.Lot.Text).Text(row.FromPlace.Text).Date(season.Monday(row.Week))
                .Text(row.Place.Text).Number(row.MassRatio).Number(row.FreshShare).Number(row.CrackShare).Number(row.LifeUsed),
            (cells, frame) => new PathWeek(
                cells.Text(path) ?? "", new LotId(cells.Text(lot) ?? ""), new PlaceId(cells.Text(from) ?? ""), cells.Week(week, frame) ?? 0,
                new PlaceId(cells.Text(place) ?? ""), cells.Number(ratio) ?? 0, cells.Number(fresh) ?? 0, cells.Number(crack) ?? 0,
                cells.Number(life) ?? 0));
    }

    private static AnswerFile<LotShare> MakeShares()
    {
        FileLayout file = Layout("shares.csv");
        Column lot = file.NeededText("lot"), kind = file.NeededText("kind"), name = file.NeededText("name"), share = file.NeededNumber("share", Bounds.Any);
        return new(
            file,
            (text, row, _) => text.Text(row.Lot.Text).Word(Words.ShareKinds, (ShareKind?)row.Kind).Text(row.Name).Number(row.Share),
            (cells, _) => new LotShare(
                new LotId(cells.Text(lot) ?? ""), cells.Word(kind, Words.ShareKinds) ?? default, cells.Text(name) ?? "", cells.Number(share) ?? 0));
    }

    private static AnswerFile<AsIsRow> MakeAsIs()
    {
        FileLayout file = Layout("as-is.csv");
        Column kind = file.NeededText("kind"), week = file.NeededDate("week"), lot = file.NeededText("lot"), path = file.NeededText("path"),
            place = file.NeededText("place"), mass = file.NeededNumber("mass", Bounds.Any), atStart = file.NeededNumber("mass_at_start", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Word(Words.AsIsKinds, (AsIsKind?)(row.Discarded ? AsIsKind.Discarded : AsIsKind.Sold))
                .Date(season.Monday(row.Week)).Text(row.Lot.Text).Text(row.Path).Text(row.Place.Text).Number(row.Mass).Number(row.MassAtStart),
            (cells, frame) => new AsIsRow(
                cells.Word(kind, Words.AsIsKinds) == AsIsKind.Discarded, cells.Week(week, frame) ?? 0, new LotId(cells.Text(lot) ?? ""),
                cells.Text(path) ?? "", new PlaceId(cells.Text(place) ?? ""), cells.Number(mass) ?? 0, cells.Number(atStart) ?? 0));
    }

    private static AnswerFile<KeepRow> MakeKeeps()
    {
        FileLayout file = Layout("keeps.csv");
        Column week = file.NeededDate("week"), lot = file.NeededText("lot"), path = file.NeededText("path"), place = file.NeededText("place"),
            bins = file.NeededNumber("bins", Bounds.Any), atStart = file.NeededNumber("mass_at_start", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Date(season.Monday(row.Week)).Text(row.Lot.Text).Text(row.Path).Text(row.Place.Text)
                .Number(row.Bins).Number(row.MassAtStart),
            (cells, frame) => new KeepRow(
                cells.Week(week, frame) ?? 0, new LotId(cells.Text(lot) ?? ""), cells.Text(path) ?? "", new PlaceId(cells.Text(place) ?? ""),
                cells.Number(bins) ?? 0, cells.Number(atStart) ?? 0));
    }

    private static AnswerFile<MoveRow> MakeMoves()
    {
        FileLayout file = Layout("moves.csv");
        Column week = file.NeededDate("week"), lot = file.NeededText("lot"), from = file.NeededText("from"), to = file.NeededText("to"),
            bins = file.NeededNumber("bins", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Date(season.Monday(row.Week)).Text(row.Lot.Text).Text(row.From.Text).Text(row.To.Text).Number(row.Bins),
            (cells, frame) => new MoveRow(
                cells.Week(week, frame) ?? 0, new LotId(cells.Text(lot) ?? ""), new PlaceId(cells.Text(from) ?? ""),
                new PlaceId(cells.Text(to) ?? ""), cells.Number(bins) ?? 0));
    }

    private static AnswerFile<RoomRow> MakeRooms()
    {
        FileLayout file = Layout("rooms.csv");
        Column place = file.NeededText("place"), closed = file.NeededDate("sealed"), opened = file.Date("opened");
        return new(
            file,
            (text, row, season) => text.Text(row.Place.Text).Date(season.Monday(row.Sealed))
                .Date(row.Opened is { } week ? season.Monday(week) : null),
            (cells, frame) => new RoomRow(new PlaceId(cells.Text(place) ?? ""), cells.Week(closed, frame) ?? 0, cells.Week(opened, frame)));
    }

    private static AnswerFile<WorthRow> MakeWorths()
    {
        FileLayout file = Layout("worths.csv");
        Column kind = file.NeededText("kind"), name = file.Text("name"), week = file.Date("week"), value = file.NeededNumber("value", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Text(row.Kind).Text(row.Name).Date(row.Week is { } week ? season.Monday(week) : null).Number(row.Value),
            (cells, frame) => new WorthRow(cells.Text(kind) ?? "", cells.Text(name) ?? "", cells.Week(week, frame), cells.Number(value) ?? 0));
    }

    private static FileLayout Layout(string name) => new(name, needed: true, rowLimit: int.MaxValue);
}
