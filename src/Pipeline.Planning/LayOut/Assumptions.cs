using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Figures a plan rests on that nobody at this bench has confirmed.</summary>
internal static class Assumptions
{
    public static Sequence<string> Of(Timetable table)
    {
        var batch = table.Batch;
        var steps = Enumerable.Range(0, table.Walked.Routes.Count).SelectMany(r => table.Walked.Routes[r].Route.Steps.Where(step => !table.IsDone(r, step))).ToList();
        var lines = new List<string>();
        var laid = steps.SelectMany(step => step.Lays).Select(lay => lay.Layer).Where(layer => layer.Paint is not null).DistinctBy(layer => layer.Paint!.Name).ToList();
        if (laid.Where(layer => !layer.HasLabelTimes).Select(layer => layer.Family?.Name).OfType<string>().Distinct().ToList() is { Count: > 0 } families)
            lines.Add($"Drying times of {Phrases.Listed(families)} are the usual ones, not a label's.");
        var factors = laid.Select(layer => layer.Family?.Carrier ?? Carrier.None).Distinct().Order()
            .Select(carrier => (carrier, Day: DryingFactor.Of(carrier, batch.Bench.Climate.Day), Night: DryingFactor.Of(carrier, batch.Bench.Climate.Night)))
            .Where(f => f.Day is not 1 || f.Night is not 1)
            .Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.carrier.ToString().ToLowerInvariant()} {f.Day:0.##} by day, {f.Night:0.##} overnight")).ToList();
        if (factors.Count > 0)
            lines.Add($"Drying times are stretched for the bench's climate: {string.Join("; ", factors)}.");
        var usual = steps.Count(step => !step.Work.IsFromFile && step.Work.PerUnit.Minutes > 0);
        if (usual > 0)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"Minutes of {usual} of {Phrases.Counted(steps.Count, "step")} are the usual ones; 'minutes' and 'set-up' in the file override them."));
        var tools = steps.Select(step => step.Work.Tool).OfType<string>().Distinct().ToList();
        foreach (var tool in tools.Where(name => !batch.Bench.Tools.Any(t => string.Equals(t.Name, name, StringComparison.OrdinalIgnoreCase))))
            lines.Add($"The bench does not list a tool '{tool}'; one is counted on.");
        if (tools.Count > 0)
        {
            var sources = Enum.GetValues<ToolChange>().Select(batch.Tables.CleanOut).OfType<CleanOutTime>().Select(row => row.Source).Distinct().ToList();
            lines.Add(sources.Count == 0
                ? "No plugin says how long cleaning a spraying tool takes; nothing is counted for it."
                : $"Minutes for cleaning tools out: {Phrases.Listed(sources)}.");
        }

        if (laid.Count > 0)
        {
            lines.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"Amounts of paint follow from area, film thickness, solids and overspray by common practice; an airbrush cup of {table.Batch.Bench.Cup?.Millilitres ?? PaintNeed.CupMillilitres:0.#} mL is filled to {PaintNeed.CupFill * 100:0} %. {PaintNeed.DropsPerMillilitre} drops count as 1 mL; drops of your bottles may differ."));
        }

        return lines.ToSequence();
    }
}
