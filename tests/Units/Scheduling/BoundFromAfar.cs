using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>The bound as it would be if only a much later schedule were known, so that nothing hides a false one.</summary>
internal static class BoundFromAfar
{
    public static long Of(Problem problem, long finish)
    {
        var net = new Net(problem);
        var components = new Components(net);
        var hours = new Hours(net);
        var bound = new LowerBound(net, components, hours, Heads.Of(net, components, hours));
        bound.Sharpen(finish + 2000);
        return bound.Finish;
    }
}
