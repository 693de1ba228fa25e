namespace Cloveshed.App.Tests;

/// <summary>
/// A season of two weeks with one lot, one line and one order, all costs nothing. 1000 lb of fit bulbs at a kept share of 0.9
/// make 30 cartons of 30 lb; all are ordered at 20, so that the best plan is worth 600.
/// </summary>
internal static class SmallShed
{
    public const double Worth = 600;

    private static readonly Dictionary<string, string> Files = new()
    {
        ["season.json"] = """{"contract": 1, "name": "Small shed", "first_week": "2030-07-01", "weeks": 2, "mass_unit": "lb", "currency": "USD"}""" + "\n",
        ["sizes.csv"] = "class,min_mm\nM,10\n",
        ["varieties.csv"] = "variety,mass_a,mass_b,mass_s,keeps\nplain,-7,2.8,0.02,long\n",
        ["places.csv"] = "place,kind,capacity_bins,temp_c,rh\nyard,open,100,15,60\n",
        ["lots.csv"] = "lot,place,variety,field,harvested,bins,net,fresh_share,crack_share,mean_g,cv\nA,yard,plain,north,2030-06-20,10,1000,1,0,50,0.02\n",
        ["yields.csv"] = "mode,kept_share\nfresh,0.9\n",
        ["lines.csv"] = "line,mode,rate_per_hour,hours_per_week,cost_per_hour\npack,fresh,1000,40,0\n",
        ["products.csv"] = "product,form,from,net,unit_cost\nM30,bulb,M,30,0\n",
        ["orders.csv"] = "order,line,customer,product,due,units,price\no,1,Brask Foods,M30,2030-07-04,30,20\n",
    };

    /// <summary>Writes the season into a folder of the trial and names it.</summary>
    public static string In(Trial trial, string name = "season")
    {
        string folder = trial.At(name);
        Directory.CreateDirectory(folder);
        foreach ((string file, string text) in Files)
        {
            File.WriteAllText(Path.Combine(folder, file), text);
        }

        return folder;
    }

    /// <summary>Replaces text that must be there, so that no test spoils nothing.</summary>
    public static void Change(string folder, string file, string old, string by)
    {
        string path = Path.Combine(folder, file), text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, by, StringComparison.Ordinal));
    }
}
