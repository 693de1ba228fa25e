using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Promises;

/// <summary>What promises need of the host: the room where a plan's model stands, what a request reads of it, their doors.</summary>
internal static class PromiseParts
{
    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<PromiseRoom>();
        services.AddHostedService(parts => parts.GetRequiredService<PromiseRoom>());
        services.AddScoped<PromiseReading>();
    }

    public static void Map(IEndpointRouteBuilder routes) => PromiseDoors.Map(routes);
}
