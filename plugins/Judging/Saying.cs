using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>Short ways for a rule to answer.</summary>
internal static class Saying
{
    /// <summary>Wrong at this step, on one area; the same words about other areas become one finding.</summary>
    public static Verdict Says(this Moment moment, Level level, string area, string message, string remedy, params Pointer[] related) =>
        moment.Says(level, [area], message, remedy, related);

    /// <summary>Wrong at this step.</summary>
    public static Verdict Says(
        this Moment moment, Level level, Sequence<string> areas, string message, string remedy, params Pointer[] related) => new Verdict.Says
        {
            Step = moment.Step.Index,
            Level = level,
            Areas = areas,
            Message = message,
            Remedy = remedy,
            Related = related.ToSequence(),
        };

    /// <summary>The verdict, told only where nothing sharper is.</summary>
    public static Verdict GivingWay(this Verdict verdict) => verdict with { GivesWay = true };

    /// <summary>This step waits until a layer has reached a state. Null if the layer never does.</summary>
    public static Verdict.Needs? WaitsFor(this Moment moment, Layer layer, DryingState state, string area, string message, string remedy) =>
        layer.TimeTo(state) is { } time ? moment.WaitsSince(layer, time, InWords(state), area, message, remedy) : null;

    /// <summary>This step waits a time since a layer was laid.</summary>
    public static Verdict.Needs WaitsSince(
        this Moment moment, Layer layer, DryingRange time, string waitsFor, string area, string message, string remedy) => new()
        {
            Step = moment.Step.Index,
            Since = layer.Step,
            Span = new Span.AtLeast(time),
            Carrier = layer.Family?.Carrier ?? Carrier.None,
            For = waitsFor,
            Areas = [area],
            Message = message,
            Remedy = remedy,
            IsFromLabel = layer.HasLabelTimes,
            Related = [new Pointer(layer.Step, $"{layer.Name} was laid here")],
        };

    /// <summary>A drying state as it stands on a plan.</summary>
    public static string InWords(DryingState state) => state switch
    {
        DryingState.TouchDry => "touch-dry",
        DryingState.Recoatable => "recoatable",
        DryingState.Handleable => "handleable",
        DryingState.MaskSafe => "mask-safe",
        DryingState.WashSafe => "wash-safe",
        _ => "cured",
    };
}
