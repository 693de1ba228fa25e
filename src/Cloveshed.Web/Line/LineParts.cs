using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Line;

/// <summary>What the place needs of the host: its shelves, the room where sizers' files are read, its doors.</summary>
internal static class LineParts
{
    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<WeightsShelf>();
        services.AddSingleton<DrumShelf>();
        services.AddSingleton<CountRoom>();
        services.AddHostedService(parts => parts.GetRequiredService<CountRoom>());
    }

    public static void Map(IEndpointRouteBuilder routes)
    {
        SizerDoors.Map(routes);
        SampleDoors.Map(routes);
        DrumDoors.Map(routes);
        CountDoors.Map(routes);
    }
}
