using Cloveshed.Core;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Ledger.Tests;

/// <summary>A season of contract 2 in a ledger: its rows come out as they went in, and what they come to follows each change.</summary>
public sealed class TermsTests : IDisposable
{
    private readonly Shed shed = new();

    private static readonly (string File, string? Text)[] Terms =
    [
        ("season.json", """{"contract": 2, "name": "Small shed", "first_week": "2030-07-01", "weeks": 3, "mass_unit": "lb", "currency": "USD"}""" + "\n"),
        ("orders.csv", "order,line,customer,product,due,units,price,price_list,destination\no1,1,Brask Foods,M30,2030-07-04,30,20,,\no2,1,Tullen Market,M30,2030-07-11,12,,fall,port\n"),
        ("price-lists.csv", "list,product,from,to,price\nfall,M30,2030-07-01,,21.50\n"),
        ("freight.csv", "destination,product,cost\nport,,1.25\n"),
        ("programs.csv", "program,customer,product,from,to,least,most,price_list,short_cost\nweekly,Brask Foods,M30,2030-07-08,2030-07-15,5,8,fall,3\n"),
        ("promotions.csv", "promotion,customer,product,from,to,cut,extra\nfair,Brask Foods,M30,2030-07-15,2030-07-15,0.50,\n"),
    ];

    public void Dispose() => shed.Dispose();

    [Fact]
    public void Every_row_comes_out_as_it_went_in()
    {
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files = SmallSeason.With(Terms);
        Assert.True(SeasonImport.Import(shed.Ledger, files, shed.Here).Taken);
        shed.Reopen();
        SeasonExport.Export(shed.Ledger.Now(), shed.At("out"));

        foreach ((string name, ReadOnlyMemory<byte> bytes) in files)
            Assert.Equal(System.Text.Encoding.UTF8.GetString(bytes.Span), File.ReadAllText(Path.Combine(shed.At("out"), name)).ReplaceLineEndings("\n"));
        Assert.Equal(files.Count, Directory.GetFiles(shed.At("out")).Length);
        Assert.True(SeasonImport.Import(shed.Ledger, shed.At("out"), shed.Here).Already);
    }

    [Fact]
    public void A_changed_list_changes_every_price_that_comes_from_it()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.With(Terms), shed.Here);
        Assert.Equal([20, 20.25m, 21.5m, 21.5m, 21, 21], Prices());
        SeasonRow row = Assert.Single(shed.Ledger.Now().Rows!.Of("price-lists.csv"));

        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([shed.Here.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["price"] = "30" })]));

        Assert.Equal([20, 28.75m, 30, 30, 29.5m, 29.5m], Prices());
        Assert.Equal((new OrderId("weekly 2030-07-08"), "1"), (shed.Ledger.Now().Season!.Orders[2].Order, shed.Ledger.Now().Season!.Orders[2].Number));
    }

    [Fact]
    public void A_list_that_a_line_needs_cannot_be_dropped()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.With(Terms), shed.Here);

        Appended.Refused refused = Assert.IsType<Appended.Refused>(shed.Ledger.Append([shed.Here.RowDropped(Assert.Single(shed.Ledger.Now().Rows!.Of("price-lists.csv")))]));

        Assert.Equal(["orders.csv", "programs.csv"], refused.Refusals.Select(one => one.Message[..one.Message.IndexOf(',', StringComparison.Ordinal)]));
        Assert.Equal(6, Prices().Length);
    }

    [Fact]
    public void In_contract_1_a_row_of_terms_is_refused_with_what_to_do()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here);

        Appended.Refused refused = Assert.IsType<Appended.Refused>(
            shed.Ledger.Append([shed.Here.RowEntered("freight.csv", new Dictionary<string, string> { ["destination"] = "port", ["cost"] = "1" })]));

        Assert.Contains("\"contract\": 2", Assert.Single(refused.Refusals).Remedy, StringComparison.Ordinal);
        Assert.Equal(1, shed.Ledger.Now().Season!.Settings.Contract);
    }

    private decimal[] Prices() => [.. shed.Ledger.Now().Season!.Orders.Select(line => line.Price)];
}
