using System.Text;

namespace Cloveshed.Ledger.Tests;

/// <summary>A season small enough to see whole, sound as it stands.</summary>
internal static class SmallSeason
{
    private static readonly Dictionary<string, string> Sound = new()
    {
        ["season.json"] = """{"contract": 1, "name": "Small shed", "first_week": "2030-07-01", "weeks": 3, "mass_unit": "lb", "currency": "USD"}""" + "\n",
        ["sizes.csv"] = "class,min_mm\nM,10\n",
        ["varieties.csv"] = "variety,mass_a,mass_b,mass_s,keeps\nplain,-7,2.8,0.02,long\n",
        ["places.csv"] = "place,kind,capacity_bins,temp_c,rh\nyard,open,100,15,60\n",
        ["lots.csv"] = "lot,place,variety,field,harvested,bins,net,fresh_share,crack_share,mean_g,cv\nA,yard,plain,north,2030-06-20,10,1000,1,0,50,0.02\nB,yard,plain,south,2030-06-21,5,500.0,0.90,0,48,0.02\n",
        ["yields.csv"] = "mode,kept_share\nfresh,0.9\n",
        ["lines.csv"] = "line,mode,rate_per_hour,hours_per_week,cost_per_hour\npack,fresh,1000,40,0\n",
        ["products.csv"] = "product,form,from,net,unit_cost\nM30,bulb,M,30,0\n",
        ["orders.csv"] = "order,line,customer,product,due,units,price\no1,1,Brask Foods,M30,2030-07-04,30,20\no2,1,Tullen Market,M30,2030-07-11,12,21.50\n",
    };

    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files() => With();

    /// <summary>The season with files otherwise; a null text leaves the file out.</summary>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> With(params ReadOnlySpan<(string File, string? Text)> otherwise)
    {
        Dictionary<string, string> files = new(Sound);
        foreach ((string file, string? text) in otherwise)
            if (text is null)
                files.Remove(file);
            else
                files[file] = text;
        return files.ToDictionary(file => file.Key, file => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(file.Value));
    }

    /// <summary>A sound row of orders.csv.</summary>
    public static Dictionary<string, string> Order(string order, string units = "5") => new()
    {
        ["order"] = order, ["line"] = "1", ["customer"] = "Brask Foods", ["product"] = "M30", ["due"] = "2030-07-10", ["units"] = units, ["price"] = "20",
    };

    public static void Put(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach ((string file, string text) in Sound)
            File.WriteAllText(Path.Combine(folder, file), text);
    }
}
