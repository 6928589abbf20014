using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>What to take out and check before a sitting.</summary>
internal static class TakeOut
{
    /// <summary>Tools, paints, thinners, mask materials, glues, liquids and what else the steps take, each once; what the tools are cleaned with; the air to check for.</summary>
    public static Sequence<string> Of(IReadOnlyList<Step> steps, IReadOnlyList<PlannedTask> tasks, IReadOnlyList<MixOrder> mixes, IReadOnlyDictionary<string, Paint> paints)
    {
        var things = new List<string>();
        foreach (var task in tasks)
        {
            if (task.Tool is { } tool)
                Add(tool);
            if (task.Paint is { FromMix: null } use)
                Add(use.Name);
        }

        foreach (var mix in mixes)
            Add($"for {mix.Name}: {Phrases.Listed([.. mix.Parts.Select(part => part.Name)])}");
        foreach (var step in steps)
            Products(step);
        if (Families().Where(f => !f.Cleaners.IsEmpty).Select(f => f.Cleaners[0]).Distinct().ToList() is { Count: > 0 } cleaners)
            Add($"to clean with: {Phrases.Listed(cleaners)}");
        if (Air() is { } air)
            Add(air);
        return things.ToSequence();

        void Add(string thing)
        {
            if (!things.Contains(thing))
                things.Add(thing);
        }

        void Products(Step step)
        {
            foreach (var deed in step.Deeds)
            {
                var product = deed switch
                {
                    Deed.PutMaskOn mask => mask.Material.Name,
                    Deed.Prepare prepare => prepare.With ?? (prepare.Glue is { } glue ? Instructions.Glue(glue) : null),
                    Deed.Join join => join.Glue is { } glue ? Instructions.Glue(glue) : null,
                    Deed.CleanBack back => back.With,
                    Deed.Strip strip => strip.With,
                    Deed.Lay { Layer.Paint: null } lay => lay.Layer.Name,
                    _ => null,
                };
                if (!string.IsNullOrEmpty(product))
                    Add(product);
            }

            foreach (var aid in step.Work.Aids)
                Add(aid);
            if (step.Work.StandsIn is { } place)
                Add(place);
        }

        IEnumerable<Family> Families() => tasks.Select(task => task.Paint).OfType<PaintUse>()
            .Select(use => paints.GetValueOrDefault(use.Name)?.Family).OfType<Family>();

        // The narrowest of what the coats of the evening bear.
        string? Air()
        {
            var families = Families().ToList();
            if (families.Count == 0)
                return null;
            var coldest = families.Max(f => f.Coldest?.DegreesCelsius);
            var warmest = families.Min(f => f.Warmest?.DegreesCelsius);
            var dampest = families.Min(f => f.Dampest.Fraction) * 100;
            var degrees = (coldest, warmest) switch
            {
                (null, null) => "",
                (null, _) => string.Create(CultureInfo.InvariantCulture, $"{warmest:0.#} °C at most, "),
                (_, null) => string.Create(CultureInfo.InvariantCulture, $"{coldest:0.#} °C at least, "),
                _ => string.Create(CultureInfo.InvariantCulture, $"{coldest:0.#}–{warmest:0.#} °C, "),
            };
            return string.Create(CultureInfo.InvariantCulture, $"check the air: {degrees}{dampest:0.#} % humidity at most");
        }
    }
}
