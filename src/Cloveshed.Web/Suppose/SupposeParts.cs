using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Suppose;

/// <summary>What supposed changes need of the host beside the room where a plan's model stands: their doors.</summary>
internal static class SupposeParts
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        SupposeDoors.Map(routes);
        SupposeApi.Map(routes);
    }
}
