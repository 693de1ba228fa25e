using Cloveshed.Web.Plan.Actual;
using Cloveshed.Web.Plan.Board;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Plan.Otherwise;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Plan.Week;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Plan;

/// <summary>What the place needs of the host: its shelves, the room where plans are made, its doors.</summary>
internal static class PlanParts
{
    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<BasisShelf>();
        services.AddSingleton<SightShelf>();
        services.AddSingleton<BoardShelf>();
        services.AddSingleton<WeekShelf>();
        services.AddSingleton<WeekRoom>();
        services.AddSingleton<DoneShelf>();
        services.AddSingleton<PlanRoom>();
        services.AddHostedService(parts => parts.GetRequiredService<PlanRoom>());
        services.AddHostedService(parts => parts.GetRequiredService<WeekRoom>());
        services.AddSingleton<OtherwiseRoom>();
        services.AddHostedService(parts => parts.GetRequiredService<OtherwiseRoom>());
    }

    public static void Map(IEndpointRouteBuilder routes)
    {
        PlanDoors.Map(routes);
        PlanApi.Map(routes);
        WeekDoors.Map(routes);
        ActualDoors.Map(routes);
        OtherwiseDoors.Map(routes);
    }
}
