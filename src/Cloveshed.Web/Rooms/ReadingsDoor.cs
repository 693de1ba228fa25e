using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.SeasonFiles.Rooms;
using Cloveshed.SeasonFiles.Weighing;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Rooms;

/// <summary>
/// POST /keep-rooms/file: readings from a CSV file, all of them as one batch or none. A row's id is made of what it says, so that a logger's
/// file that is sent again, longer by a day, adds that day and nothing twice.
/// </summary>
internal static class ReadingsDoor
{
    /// <summary>Bytes of a file: some hundred for each of the most rows.</summary>
    public const long MostBytes = 8 * 1024 * 1024;

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/keep-rooms/file", Take).WithFormOptions(multipartBodyLengthLimit: MostBytes + 65_536);

    private static async Task<IResult> Take(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock, SaidOnce said)
    {
        Words<RoomWord> words = Words.Of<RoomWord>(shed.Viewer.Language);
        RoomDraft draft = RoomDraft.Of(RoomForm.File, form);
        if (desk.OnlyToLookAt(context, form) is { } past)
        {
            return past;
        }

        if (shed.Season is not { } season || form.Files.GetFile("file") is not { Length: > 0 and <= MostBytes } file)
        {
            return RoomDoors.Again(shed, draft, [new FormFault(draft.FieldId("file"), words[RoomWord.FaultNoFile], words[RoomWord.FaultNoFileRemedy])]);
        }

        using MemoryStream bytes = new();
        await file.CopyToAsync(bytes, context.RequestAborted);
        FileReading<IReadOnlyList<ReadingRow>> reading = ReadingsFile.Parse(
            Path.GetFileName(file.FileName), bytes.ToArray(), new ReadingsAsked([.. season.Places.Select(place => place.Id.Text)], clock.LocalTimeZone, clock.GetLocalNow().AddMinutes(1), draft["who"].Length == 0),
            shed.Viewer.FileLanguage);
        if (reading.Value is not { } rows)
        {
            FormFault[] told = [.. reading.Faults.Select(fault => new FormFault(null, (fault with { Remedy = "" }).ToString().TrimEnd(), fault.Remedy))];
            return RoomDoors.Again(shed, draft, reading.FaultCount > told.Length ? [.. told, new FormFault(null, words.Say(RoomWord.FaultMore, shed.Reader.Number(reading.FaultCount - told.Length, 0)))] : told);
        }

        FactOrigin origin = desk.Origin(RoomDoors.Place);
        Appended appended = desk.Append([.. rows.Select(row => Fact(origin, row, draft))]);
        if (appended is Appended.Refused refused)
        {
            return RoomDoors.Again(shed, draft, FormFault.Of(refused));
        }

        said.Say(context, new Said(false, words.Say(((Appended.Accepted)appended).Again ? RoomWord.FileAgain : RoomWord.FileKept, shed.Reader.Number(rows.Count, 0))));
        return new SeeOther(FactDesk.LocalPath(form[FactDesk.BackField]));
    }

    private static NewFact Fact(FactOrigin origin, ReadingRow row, RoomDraft draft)
    {
        AirSaid air = new(
            row.Place, row.TempC, row.Rh, row.O2, row.Co2, ReadingSource.File, string.IsNullOrEmpty(row.Who) ? draft["who"] : row.Who,
            string.IsNullOrEmpty(row.Instrument) ? draft["instrument"] : row.Instrument);
        NewFact made = RoomBodies.Made(origin with { HappenedAt = row.At }, air);
        return made with { Id = IdOf(row.At, made.Body.GetRawText()) };
    }

    /// <summary>A UUID of version 7: the reading's millisecond, and SHA-256 of its moment and body where another has chance.</summary>
    internal static Guid IdOf(DateTimeOffset at, string body)
    {
        Span<byte> digest = stackalloc byte[32];
        SHA256.HashData(Encoding.UTF8.GetBytes($"{at:O}\n{body}"), digest);
        Span<byte> id = stackalloc byte[16];
        digest[..16].CopyTo(id);
        Span<byte> milliseconds = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(milliseconds, at.ToUnixTimeMilliseconds());
        milliseconds[2..].CopyTo(id);
        id[6] = (byte)(0x70 | (id[6] & 0x0F));
        id[8] = (byte)(0x80 | (id[8] & 0x3F));
        return new Guid(id, bigEndian: true);
    }
}
