using System.Globalization;
using System.Text;
using Cloveshed.Core.Seasons;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Plan;

/// <summary>What of a plan is looked at, as the address says it: which lots the board shows, what is chosen, the week whose runs are listed.</summary>
/// <param name="Path">/plan, or /plan/ and the plan's id.</param>
/// <param name="All">The board shows all lots, a page of them at a time, and not only those worth most.</param>
/// <param name="From">The first lot of the page, from 0.</param>
/// <param name="Run">The chosen run's number.</param>
/// <param name="Lot">The chosen lot.</param>
/// <param name="Week">Null: this week.</param>
/// <param name="To">The week to which a hand has moved the chosen run, not held yet; null: none.</param>
public sealed record PlanView(string Path, bool All = false, int From = 0, string? Run = null, string? Lot = null, LocalDate? Week = null, LocalDate? To = null)
{
    /// <summary>Where the page has what is chosen.</summary>
    public const string SideId = "side";

    /// <summary>The same view with a run chosen.</summary>
    public PlanView OfRun(string run) => this with { Run = run, Lot = null, To = null };

    /// <summary>The same view with a lot chosen.</summary>
    public PlanView OfLot(string lot) => this with { Run = null, Lot = lot, To = null };

    /// <summary>The address; with the part of the page that holds what is chosen, where something is.</summary>
    public string Href
    {
        get
        {
            StringBuilder address = new(Path);
            char joint = '?';
            void Say(string key, string? value)
            {
                if (value is not null)
                {
                    address.Append(joint).Append(key).Append('=').Append(Uri.EscapeDataString(value));
                    joint = '&';
                }
            }

            Say("show", All ? "all" : null);
            Say("from", From > 0 ? From.ToString(CultureInfo.InvariantCulture) : null);
            Say("week", Week is { } monday ? LocalDatePattern.Iso.Format(monday) : null);
            Say("run", Run);
            Say("lot", Lot);
            Say("to", To is { } moved ? LocalDatePattern.Iso.Format(moved) : null);
            return (Run ?? Lot) is null ? address.ToString() : address.Append('#').Append(SideId).ToString();
        }
    }

    /// <summary>The week whose runs are listed: the one asked for, else the one that holds today; where that is outside the season, the first that is planned.</summary>
    public static int Listed(LocalDate? asked, LocalDate today, SeasonSettings season)
    {
        int week = season.WeekOf(asked ?? today);
        return week < season.AsOfWeek || week >= season.Weeks ? season.AsOfWeek : week;
    }
}
