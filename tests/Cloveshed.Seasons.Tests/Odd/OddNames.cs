using Cloveshed.Core;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Gives lots, places, lines, products and orders names that only a careful reader and writer of CSV carries through.</summary>
internal static class OddNames
{
    public static Season Quoted(Season s)
    {
        static string Odd(string text) => $"ajo «{text}», \"nº\" {text}; ñ";
        LotId Lot(LotId id) => new(Odd(id.Text));
        PlaceId At(PlaceId id) => new(Odd(id.Text));
        ProductId Pack(ProductId id) => new(Odd(id.Text));
        LineId On(LineId id) => new(Odd(id.Text));
        return s with
        {
            Lots = [.. s.Lots.Select(l => l with { Lot = Lot(l.Lot), Place = At(l.Place), Field = Odd(l.Field) })],
            Samples = [.. s.Samples.Select(b => b with { Lot = Lot(b.Lot) })],
            Places = [.. s.Places.Select(p => p with { Id = At(p.Id) })],
            PlaceWeeks = [.. s.PlaceWeeks.Select(p => p with { Place = At(p.Place) })],
            SealedRooms = [.. s.SealedRooms.Select(r => r with { Place = At(r.Place) })],
            Lines = [.. s.Lines.Select(l => l with { Id = On(l.Id) })],
            LineWeeks = [.. s.LineWeeks.Select(l => l with { Line = On(l.Line) })],
            Products = [.. s.Products.Select(p => p with { Id = Pack(p.Id) })],
            Stock = [.. s.Stock.Select(k => k with { Product = Pack(k.Product), Lot = k.Lot is { } lot ? Lot(lot) : null })],
            Market = [.. s.Market.Select(m => m with { Product = Pack(m.Product) })],
            Orders = [.. s.Orders.Select(o => o with { Order = new(Odd(o.Order.Text)), Product = Pack(o.Product), Customer = Odd(o.Customer) })],
        };
    }
}
