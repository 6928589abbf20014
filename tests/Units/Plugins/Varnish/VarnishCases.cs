using Pipeline.Abstractions;
using Pipeline.Plugins.Varnish;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Varnish.</summary>
internal static class VarnishCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("varnish: all, with: clear, by: airbrush, body: mist, coats: 2, overspray: rim", new Varnish(),
            new Varnishing(Clear, Method.Airbrush, 2, Body.Mist, Only("rim")), Figures,
            "Varnish clear by Airbrush, 2 Mist, recoatable 30–60 min, overspray rim",
            "1.6 min, 2 passes, set up 3/0, airbrush with clear, rack"),
        new("varnish: all, with: clear, by: brush", new Varnish(), new Varnishing(Clear, Method.Brush), Figures,
            "Varnish clear by Brush, 1 Heavy, recoatable 60 min – 2 h", "5.1 min, set up 2/2, rack"),
    ];
}
