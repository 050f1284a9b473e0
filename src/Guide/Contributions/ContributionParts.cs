using Foreshore.Guide.Hazards;

namespace Foreshore.Guide.Contributions;

/// <summary>What the feature adds to the site.</summary>
internal static class ContributionParts
{
    public static void AddContributions(this IServiceCollection services)
    {
        services.AddSingleton<Contributing>();
        services.AddSingleton<PhotoProposals>();
        services.AddSingleton<Reviewing>();
        services.AddSingleton<Warding>();
        services.AddSingleton<NearMissTally>();
        services.AddSingleton<NearMissForgetting>();
        services.AddHostedService(provider => provider.GetRequiredService<NearMissForgetting>());
        services.AddSingleton<StillCorrect>();
        services.AddSingleton<StationChoice>();
    }

    public static void MapContributions(this IEndpointRouteBuilder routes)
    {
        routes.MapStillCorrect();
        routes.MapLiveLight();
    }
}
