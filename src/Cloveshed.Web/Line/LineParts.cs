using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Line;

/// <summary>What the place needs of the host: its shelf and its doors.</summary>
internal static class LineParts
{
    public static void Add(IServiceCollection services) => services.AddSingleton<WeightsShelf>();

    public static void Map(IEndpointRouteBuilder routes) => SizerDoors.Map(routes);
}
