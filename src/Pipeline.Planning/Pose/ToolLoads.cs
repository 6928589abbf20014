using System.Collections.Immutable;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>The tools the steps ask for, what they hold, and the minutes between two loads.</summary>
internal sealed class ToolLoads
{
    private readonly List<string> names = [];
    private readonly List<List<Paint?>> loads = [];

    /// <summary>The tools by index, in the order in which the routes ask for them.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>What a tool may hold, by index; null for nothing.</summary>
    public Paint? Load(int tool, int load) => loads[tool][load];

    /// <summary>The tool and load of a step, or null if it needs none.</summary>
    public ToolUse? Use(Work work)
    {
        if (work.Tool is not { } name)
            return null;
        var tool = names.IndexOf(name);
        if (tool < 0)
        {
            tool = names.Count;
            names.Add(name);
            loads.Add([]);
        }

        var load = loads[tool].FindIndex(held => held?.Name == work.Load?.Name);
        if (load < 0)
        {
            load = loads[tool].Count;
            loads[tool].Add(work.Load);
        }

        return new ToolUse(tool, load);
    }

    /// <summary>The tools for the scheduler. A tool the bench does not list counts as one.</summary>
    public ImmutableArray<Tool> ForScheduler(Bench bench, Tables tables)
    {
        var tools = ImmutableArray.CreateBuilder<Tool>();
        for (var t = 0; t < names.Count; t++)
        {
            var name = names[t];
            var held = loads[t];
            var listed = bench.Tools.FirstOrDefault(tool => string.Equals(tool.Name, name, StringComparison.OrdinalIgnoreCase));
            tools.Add(new Tool(
                name,
                Math.Max(1, listed?.Count ?? 1),
                [.. held.Select(paint => paint?.Name ?? "")],
                [.. held.Select(from => held.Select(to => Clock.Of(Between(from, to, tables))).ToImmutableArray())],
                [.. held.Select(paint => paint is null ? 0 : Clock.Of(Minutes(tables, ToolChange.GetReady)))],
                [.. held.Select(paint => Clock.Of(AtEnd(paint, tables)))]));
        }

        return tools.ToImmutable();
    }

    /// <summary>
    /// Cleaning a tool out between two loads. Families count as changed when another kind of carrier comes into the cup: lacquer paint and
    /// lacquer varnish are flushed with the same thinner. Where a colour is not known, the dearer change is taken.
    /// </summary>
    private static Attended Between(Paint? from, Paint? to, Tables tables)
    {
        if (from?.Name == to?.Name)
            return default;
        if (from is null)
            return Minutes(tables, ToolChange.GetReady);
        if (to is null)
            return AtEnd(from, tables);
        var carrier = from.Family.Carrier != to.Family.Carrier ? Minutes(tables, ToolChange.FamilyChange) : default;
        var strip = from.IsMetallic ? Minutes(tables, ToolChange.AfterMetallic) : default;
        var isDarker = Lightness.Of(from) is { } before && Lightness.Of(to) is { } after && after <= before;
        var change = Longest(carrier, strip, Minutes(tables, isDarker ? ToolChange.LightToDark : ToolChange.DarkToLight));
        // whoever would rather clean it out altogether and get it ready anew may do so
        var anew = AtEnd(from, tables) + Minutes(tables, ToolChange.GetReady);
        return change.CompareTo(anew) > 0 ? anew : change;
    }

    private static Attended AtEnd(Paint? paint, Tables tables) =>
        paint is null ? default
        : paint.IsMetallic ? Longest(Minutes(tables, ToolChange.EndOfSitting), Minutes(tables, ToolChange.AfterMetallic))
        : Minutes(tables, ToolChange.EndOfSitting);

    private static Attended Minutes(Tables tables, ToolChange change) => tables.CleanOut(change)?.Usual ?? default;

    private static Attended Longest(params ReadOnlySpan<Attended> times)
    {
        Attended longest = default;
        foreach (var time in times)
            longest = time.CompareTo(longest) > 0 ? time : longest;
        return longest;
    }
}
