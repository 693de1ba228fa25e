using System.Text;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>A season small enough to see whole, sound as it stands; each test spoils one thing in it.</summary>
public sealed class SmallSeason
{
    private readonly Dictionary<string, byte[]> files = new()
    {
        ["season.json"] = Bytes("""
            {
              "contract": 1,
              "name": "Quillon Flat 2026",
              "first_week": "2026-09-07",
              "weeks": 10,
              "mass_unit": "lb",
              "currency": "USD"
            }
            """),
        ["sizes.csv"] = Bytes("class,code,min_mm,max_mm\nsmall,S,38,51\nmedium,M,51,64\nlarge,L,64,\n"),
        ["varieties.csv"] = Bytes(
            "variety,mass_a,mass_b,mass_s,keeps,cloves_per_bulb,clove_cv,clove_a,clove_b,clove_s\n" +
            "Early Sorrel,-7.2,2.9,0.08,short,10,0.4,-6.5,2.7,0.1\nLate Sorrel,-7.1,2.9,0.08,long,,,,,\n"),
        ["places.csv"] = Bytes(
            "place,kind,capacity_bins,temp_c,rh,o2,co2,cost_per_bin_week,cost_per_week,move_in_cost,run_out_weeks\n" +
            "Yard,open,500,20,60,,,0.5,,,\nCold 1,cold,200,0,65,,,1.25,100,4,\nRoom 1,sealed,100,0,65,1,2,2,300,6,4\n"),
        ["lots.csv"] = Bytes(
            "lot,place,variety,field,harvested,bins,net,state,net_low,net_high,organic,cured,inhibitor,fresh_share,crack_share,seed_class,mean_g,cv,ready,hold\n" +
            "L1,Yard,Early Sorrel,F1,2026-07-20,60,54000,weighed,53000,55000,no,yes,no,0.8,0.1,B,52,0.25,,\n" +
            "L1,Cold 1,Early Sorrel,F1,2026-07-22,40,36000,weighed,,,no,yes,no,0.82,0.1,B,52,0.25,,\n" +
            "L2,Yard,Late Sorrel,F2,2026-09-21,100,90000,estimated,80000,99000,yes,,yes,,,,,,2026-10-05,no\n"),
        ["samples.csv"] = Bytes("lot,date,weight_g,diameter_mm,defect\nL1,2026-08-01,48.5,52,\nL1,2026-08-01,61,,mold\nL2,2026-09-22,70,60.5,\n"),
        ["yields.csv"] = Bytes("mode,kept_share\nfresh,0.88\ncrack,0.8\nseed,0.78\n"),
        ["lines.csv"] = Bytes(
            "line,mode,rate_per_hour,hours_per_week,overtime_hours,cost_per_hour,overtime_cost_per_hour,heads,min_run,setup_hours\n" +
            "Pack 1,fresh,6000,40,10,180,240,12,2000,0.5\nCracker,crack,3000,40,,90,,,,\n"),
        ["line-weeks.csv"] = Bytes("line,week,hours,overtime_hours\nPack 1,2026-10-12,0,\n"),
        ["people.csv"] = Bytes("week,hours\n2026-09-07,900\n"),
        ["products.csv"] = Bytes(
            "product,form,from,net,unit_cost,shelf_weeks,organic\nM30,bulb,medium,30,2.1,2,\nL30,bulb,large,30,2.1,2,no\nC5,clove,big,5,1,,\n"),
        ["clove-grades.csv"] = Bytes("grade,min_mm,max_mm\nbig,18,\nsmall,10,18\n"),
        ["stock.csv"] = Bytes("product,made,units,lot\nM30,2026-08-31,40,L0\n"),
        ["orders.csv"] = Bytes(
            "order,line,customer,product,ship_from,due,units,price,firm,late_cost,short_cost,larger_ok,whole\n" +
            "O1,1,Brask Foods,M30,,2026-09-24,100,45.50,,2,10,yes,\nO1,2,Brask Foods,L30,2026-09-14,2026-09-24,50,52,no,,,,no\n"),
        ["market.csv"] = Bytes("product,week,price,p10,p50,p90\nM30,2026-09-14,38,10,40.5,90\n"),
        ["seed-needs.csv"] = Bytes("variety,net,by,seed_class,short_cost\nEarly Sorrel,4000,2026-10-05,B,1.5\n"),
        ["sell-as-is.csv"] = Bytes("variety,price,limit\n,0.2,20000\nLate Sorrel,0.25,\n"),
        ["rooms.csv"] = Bytes("place,sealed\n"),
        ["setups.csv"] = Bytes(
            "kind,line,from,to,minutes,cost,step\nvariety,Pack 1,Early Sorrel,Late Sorrel,25,12.5,Change labels\norganic,,conventional,organic,75,140,\ncuts,,,S+M,10,,\n" +
            "cleaning,Pack 1,,,20,,\ntravel,,Yard,,12,,\n"),
        ["shifts.csv"] = Bytes(
            "kind,name,line,week,day,start,end,heads\nwork,Day,Pack 1,2026-09-14,monday,06:00,14:30,20\nwork,Night,,,,22:00,06:00,\nbreak,Meal,,,,12:00,12:30,\n" +
            "maintenance,Sizer,Pack 1,,friday,06:00,08:00,\nclosed,Fair,,2026-09-21,friday,00:00,24:00,\ndock,Trucks,,,,07:00,15:00,\n"),
    };

    public SmallSeason With(string name, string text) => With(name, Bytes(text));

    public SmallSeason With(string name, byte[] bytes)
    {
        files[name] = bytes;
        return this;
    }

    public SmallSeason Without(string name)
    {
        files.Remove(name);
        return this;
    }

    /// <summary>Replaces text that must be there, so that no test spoils nothing.</summary>
    public SmallSeason Replace(string name, string old, string by)
    {
        string text = Text(name);
        Assert.Contains(old, text, StringComparison.Ordinal);
        return With(name, text.Replace(old, by, StringComparison.Ordinal));
    }

    public SmallSeason Append(string name, string rows) => With(name, Text(name) + rows);

    public string Text(string name) => Encoding.UTF8.GetString(files[name]);

    public IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files => files.ToDictionary(file => file.Key, file => new ReadOnlyMemory<byte>(file.Value));

    public SeasonReading Read(Faults.TextLanguage language = Faults.TextLanguage.English) => SeasonReader.Parse(Files, language);

    public void WriteTo(string folder)
    {
        foreach ((string name, byte[] bytes) in files)
            File.WriteAllBytes(Path.Combine(folder, name), bytes);
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
