using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Models of one batch get the same clear colour in a different number of passes.</summary>
public sealed class PassesDiffer : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A clear colour goes on in as many passes on every model of the batch.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        var first = new Dictionary<string, Passes>(StringComparer.Ordinal);
        for (var route = 0; route < batch.Routes.Count; route++)
        {
            foreach (var (paint, passes) in Count(batch.Routes[route]))
            {
                if (!first.TryAdd(paint, passes) && Difference(first[paint], passes) is var (here, there))
                {
                    var last = batch.Routes[route].Moments[passes.LastStep];
                    yield return new BatchVerdict
                    {
                        Level = Level.Warning,
                        Place = last.Step.Place,
                        Step = new StepInBatch(route, passes.LastStep),
                        Areas = last.Step.Areas,
                        Message = $"{paint} gets {here} here and {there} on {first[paint].Model}: depth is colour, the models will not match.",
                        Remedy = "Give every model the same number of passes, of the same mix at the same pressure.",
                        Related = [new Related(first[paint].Place, $"{there} here")],
                    };
                }
            }
        }
    }

    private static IEnumerable<KeyValuePair<string, Passes>> Count(WalkedSteps route)
    {
        var byPaint = new Dictionary<string, Passes>(StringComparer.Ordinal);
        var order = new List<string>();
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not { Technique: Technique.ClearColour, Paint: { } paint } coat)
                continue;
            if (!byPaint.TryGetValue(paint.Name, out var passes))
            {
                byPaint[paint.Name] = passes = new Passes(route.Model.Name, moment.Step.Place);
                order.Add(paint.Name);
            }

            passes.LastStep = moment.Step.Index;
            foreach (var area in moment.Reached())
                passes.Add(area, coat);
        }

        return order.Select(paint => KeyValuePair.Create(paint, byPaint[paint]));
    }

    // areas of one name must agree; where no name is shared, at least one way of laying it must be
    private static (string Here, string There)? Difference(Passes there, Passes here)
    {
        var isShared = false;
        foreach (var (area, coats) in here.ByArea)
        {
            if (!there.ByArea.TryGetValue(area, out var other))
                continue;
            isShared = true;
            if (other != coats)
                return (Spoken(coats), Spoken(other));
        }

        if (isShared || here.ByArea.Count == 0 || there.ByArea.Count == 0 || here.ByArea.Values.Any(there.ByArea.ContainsValue))
            return null;
        return (Spoken(here.ByArea.Values.First()), Spoken(there.ByArea.Values.First()));
    }

    private static string Spoken((int Coats, Body Body) passes) =>
        FormattableString.Invariant($"{passes.Coats} {passes.Body.ToString().ToLowerInvariant()} pass{(passes.Coats == 1 ? "" : "es")}");

    private sealed class Passes(string model, Place place)
    {
        public string Model { get; } = model;

        public Place Place { get; } = place;

        public int LastStep { get; set; }

        public SortedList<string, (int Coats, Body Body)> ByArea { get; } = new(StringComparer.Ordinal);

        public void Add(string area, Layer coat)
        {
            ByArea.TryGetValue(area, out var before);
            ByArea[area] = (before.Coats + coat.Coats, coat.Body > before.Body || before.Coats == 0 ? coat.Body : before.Body);
        }
    }
}
