using System.Buffers.Binary;

namespace Cloveshed.Web.Setup;

/// <summary>Ids for the facts of one form, made from the form's own so that a form sent again makes the same ones.</summary>
internal static class FactIds
{
    /// <summary>The form's id for the first fact; for the others its random end counted on. Still version 7.</summary>
    public static Guid Following(Guid first, int at)
    {
        Span<byte> bytes = stackalloc byte[16];
        first.TryWriteBytes(bytes, bigEndian: true, out _);
        BinaryPrimitives.WriteUInt32BigEndian(bytes[12..], unchecked(BinaryPrimitives.ReadUInt32BigEndian(bytes[12..]) + (uint)at));
        return new Guid(bytes, bigEndian: true);
    }
}
