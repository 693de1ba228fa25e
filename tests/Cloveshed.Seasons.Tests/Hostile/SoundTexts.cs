namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>A small sound season, written by hand from the contract.</summary>
internal static class SoundTexts
{
    public static IReadOnlyDictionary<string, string> All { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["season.json"] = """
            {
              "contract": 1,
              "name": "a season by hand",
              "first_week": "2030-07-01",
              "weeks": 8,
              "mass_unit": "lb",
              "currency": "USD",
              "as_of": "2030-07-03",
              "end_price": 0.05,
              "seed": 7
            }

            """,
        ["sizes.csv"] = """
            class,code,min_mm,max_mm
            small,s,30,45
            medium,m,45,60
            large,l,60,

            """,
        ["varieties.csv"] = """
            variety,mass_a,mass_b,mass_s,keeps,cloves_per_bulb,clove_cv,clove_a,clove_b,clove_s
            white,-7,2.8,0.1,long,10,0.3,-6,2.6,0.1
            red,-7.1,2.8,0.1,short,8,0.3,-6,2.6,0.1

            """,
        ["places.csv"] = """
            place,kind,capacity_bins,temp_c,rh,o2,co2,cost_per_bin_week,cost_per_week,move_in_cost,run_out_weeks
            yard,open,100,18,55,,,0.1,0,0,
            cold,cold,50,-0.5,65,,,1,20,2,
            room,sealed,40,-0.5,65,1,5,1,30,2,2

            """,
        ["place-weeks.csv"] = """
            place,week,temp_c,rh
            yard,2030-07-08,24,50
            yard,2030-07-15,26,45

            """,
        ["lots.csv"] = """
            lot,place,variety,field,harvested,bins,net,state,net_low,net_high,organic,cured,inhibitor,fresh_share,crack_share,seed_class,mean_g,cv,ready,hold
            A,yard,white,north,2030-06-20,30,30000,weighed,,,no,yes,no,0.7,0.2,A,55,0.3,,
            A,cold,white,north,2030-06-22,20,20000,weighed,,,no,yes,no,0.8,0.1,A,55,0.3,,
            B,yard,red,south,2030-07-10,25,24000,estimated,20000,28000,no,no,no,0.6,0.3,B,48,0.35,2030-07-22,
            C,room,white,east,2030-05-20,10,9000,weighed,,,no,yes,no,0.8,0.1,,60,0.3,,

            """,
        ["samples.csv"] = """
            lot,date,weight_g,diameter_mm,defect
            B,2030-07-11,44,47,
            B,2030-07-11,61.5,,mold

            """,
        ["yields.csv"] = """
            mode,kept_share
            fresh,0.88
            crack,0.8
            seed,0.75

            """,
        ["lines.csv"] = """
            line,mode,rate_per_hour,hours_per_week,overtime_hours,cost_per_hour,overtime_cost_per_hour,heads,min_run,setup_hours
            pack,fresh,2000,40,10,150,200,10,2000,0.5
            crack,crack,1500,40,0,90,,5,,
            plant,seed,800,20,0,60,,4,,

            """,
        ["line-weeks.csv"] = """
            line,week,hours,overtime_hours
            pack,2030-07-01,0,
            pack,2030-07-08,20,5

            """,
        ["people.csv"] = """
            week,hours
            2030-07-01,300
            2030-07-08,500

            """,
        ["products.csv"] = """
            product,form,from,net,unit_cost,shelf_weeks,organic
            carton M,bulb,medium,30,1.2,2,no
            carton L,bulb,large,30,1.2,2,no
            box,clove,g1,25,0.9,0,no

            """,
        ["clove-grades.csv"] = """
            grade,min_mm,max_mm
            g1,12,18
            g2,18,

            """,
        ["stock.csv"] = """
            product,made,units,lot
            carton M,2030-06-24,40,A
            carton L,2030-07-01,12,

            """,
        ["rooms.csv"] = """
            place,sealed
            room,2030-06-05

            """,
        ["orders.csv"] = """
            order,line,customer,product,ship_from,due,units,price,firm,late_cost,short_cost,larger_ok,whole
            101,1,Market Hall,carton M,,2030-07-12,100,28.5,yes,1,4,yes,no
            101,2,Market Hall,carton L,,2030-07-12,50,31,yes,1,4,no,no
            102,1,Corner Shop,box,2030-07-15,2030-07-24,80,22,no,,,,

            """,
        ["market.csv"] = """
            product,week,price,p10,p50,p90
            carton M,2030-07-08,20,10,30,60
            carton M,2030-07-15,19,,25,

            """,
        ["seed-needs.csv"] = """
            variety,net,by,seed_class,short_cost
            white,2000,2030-08-20,B,3
            red,1000,2030-08-20,C,2

            """,
        ["sell-as-is.csv"] = """
            variety,price,limit
            ,0.1,20000
            red,0.08,

            """,
    };
}
