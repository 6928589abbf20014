using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>Pieces or paint come from a cold place straight to the bench.</summary>
public sealed class StraightFromTheCold : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Pieces and paint from a cold place warm up at the bench first.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        if (route.Model.Storage is not { } storage || FirstCoat(route) is not { } coat || !IsColder(storage, coat))
            yield break;
        var message = $"The pieces come from {storage.At} into {coat.Air.Air}: water sweats out on them under the paint.";
        var warmingUp = WarmingUp(coat);
        var remedy = $"Bring them to the bench {warmingUp} before the first coat: add 'wait: all' with 'for: {warmingUp}' at the start.";
        if (storage.InTheRoomFor is { } room)
        {
            if (room < warmingUp)
                yield return coat.Says(Level.Warning, coat.Step.Areas, $"{message} They are in the room for {room} only.", remedy);
        }
        else if (coat.Step.Index == 0)
        {
            yield return coat.Says(Level.Warning, coat.Step.Areas, message, remedy).MendedBy(coat.PutAtStart("wait", new Particular("for", warmingUp.ToString())));
        }
        else
        {
            yield return new Verdict.Needs
            {
                Step = coat.Step.Index,
                Since = 0,
                SinceStart = true,
                Span = new Span.AtLeast(DryingRange.Exactly(warmingUp)),
                Gravest = Level.Warning,
                For = "as warm as the room",
                Areas = coat.Step.Areas,
                Message = message,
                Remedy = remedy,
            };
        }
    }

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Step.Coat()?.Paint is not { } paint || Coldest(paint, moment) is not var (name, storage))
            return null;
        var since = storage.InTheRoomFor is { } room ? $"it is in the room for {room} only" : "nothing says that it warms up first";
        return new Cause(
            name,
            Level.Warning,
            $"{name} is kept at {storage.At} and used at {moment.Air.Air}; {since}: cold paint is thick and its coat sweats.",
            $"Bring it to the bench {WarmingUp(moment)} before use, and say so: 'in-the-room-for: {WarmingUp(moment)}'.");
    });

    private static (string Name, Storage Storage)? Coldest(Paint paint, Moment moment)
    {
        if (paint.Storage is { } storage && IsColder(storage, moment) && (storage.InTheRoomFor is not { } room || room < WarmingUp(moment)))
            return (paint.Name, storage);
        if (paint.Recipe is not { } recipe)
            return null;
        foreach (var part in recipe.Parts)
        {
            if (part.Paint != paint && Coldest(part.Paint, moment) is { } found)
                return found;
        }

        return null;
    }

    private static bool IsColder(Storage storage, Moment moment) =>
        storage.At.DegreesCelsius < moment.Air.Air.DegreesCelsius - moment.Tables.Figure(RuleFigures.Colder).Value;

    private static Drying WarmingUp(Moment moment) => new(moment.Tables.Figure(RuleFigures.WarmingUp).Value);

    private static Moment? FirstCoat(WalkedSteps route)
    {
        foreach (var moment in route.Moments)
        {
            if (moment.Film() is not null)
                return moment;
        }

        return null;
    }
}
