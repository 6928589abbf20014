using Pipeline.Abstractions;
using Stateless;
using Stateless.Reflection;

namespace Pipeline.Surfaces.Lifecycle;

/// <summary>
/// The state machine of a model: its states are the trade's words, its triggers the four kinds of step, its guards ask the surface.
/// One configuration serves the walk, the bench and the diagram. An instance is used by one walk at a time.
/// </summary>
public sealed class ModelLifecycle
{
    private readonly StateMachine<LifecycleState, StepKind> machine;
    private readonly Dictionary<(LifecycleState Before, StepKind Kind, LifecycleState Standing, bool IsPermitted), (LifecycleState After, bool IsRefused)> answers = [];
    private LifecycleState state;
    private Situation? situation;
    private bool isRefused;

    /// <summary>A lifecycle that stands at <see cref="LifecycleState.Bare"/>.</summary>
    public ModelLifecycle()
    {
        machine = new StateMachine<LifecycleState, StepKind>(() => state, next => state = next);
        machine.OnUnhandledTrigger((_, _) => isRefused = true);
        foreach (var (from, kind, to) in Turns)
            Permit(from, kind, to);
    }

    /// <summary>Stands at bare again, for the next model.</summary>
    public void Restart() => state = LifecycleState.Bare;

    /// <summary>Takes a step. A step that the state or the surface does not permit is refused with a reason and changes nothing.</summary>
    internal Passage Take(Situation now)
    {
        var before = state;
        // the machine is asked once about each turn; what it answered holds for all models
        var turn = (before, now.Step.Kind, now.Standing, now.Obstacle is null);
        if (!answers.TryGetValue(turn, out var answer))
            answers.Add(turn, answer = Ask(now));
        state = answer.After;
        return new Passage(before, state, answer.IsRefused ? now.Obstacle ?? $"a {Word(now.Step.Kind)} step has no turn while the model is {Word(before)}" : null);
    }

    private (LifecycleState After, bool IsRefused) Ask(Situation now)
    {
        situation = now;
        isRefused = false;
        machine.Fire(now.Step.Kind);
        return (state, isRefused);
    }

    /// <summary>The machine as it describes itself; what the diagram is drawn from.</summary>
    internal StateMachineInfo Describe() => machine.GetInfo();

    /// <summary>A word of the contract in lower case.</summary>
    internal static string Word<T>(T value)
        where T : struct, Enum =>
        value.ToString().ToLowerInvariant();

    // from a state, by a kind of step, to the states it can lead to; which one, the surface afterwards says
    private static readonly (LifecycleState From, StepKind Kind, LifecycleState[] To)[] Turns =
    [
        (LifecycleState.Bare, StepKind.Preparation, [LifecycleState.Bare, LifecycleState.Prepared, LifecycleState.Finished]),
        (LifecycleState.Bare, StepKind.Masking, [LifecycleState.Masked]),
        (LifecycleState.Bare, StepKind.Coat, [LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Bare, StepKind.Removal, [LifecycleState.Prepared, LifecycleState.Finished]),
        (LifecycleState.Prepared, StepKind.Preparation, [LifecycleState.Prepared, LifecycleState.Finished]),
        (LifecycleState.Prepared, StepKind.Masking, [LifecycleState.Masked]),
        (LifecycleState.Prepared, StepKind.Coat, [LifecycleState.Prepared, LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Prepared, StepKind.Removal, [LifecycleState.Prepared, LifecycleState.Finished]),
        (LifecycleState.Coated, StepKind.Preparation, [LifecycleState.Coated, LifecycleState.Finished]),
        (LifecycleState.Coated, StepKind.Masking, [LifecycleState.Masked]),
        (LifecycleState.Coated, StepKind.Coat, [LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Coated, StepKind.Removal, [LifecycleState.Prepared, LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Masked, StepKind.Preparation, [LifecycleState.Masked]),
        (LifecycleState.Masked, StepKind.Masking, [LifecycleState.Masked]),
        (LifecycleState.Masked, StepKind.Coat, [LifecycleState.Masked]),
        (LifecycleState.Masked, StepKind.Removal,
        [
            LifecycleState.Bare, LifecycleState.Prepared, LifecycleState.Coated, LifecycleState.Masked, LifecycleState.Sealed, LifecycleState.Finished,
        ]),
        (LifecycleState.Sealed, StepKind.Preparation, [LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Sealed, StepKind.Masking, [LifecycleState.Masked]),
        (LifecycleState.Sealed, StepKind.Coat, [LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
        (LifecycleState.Sealed, StepKind.Removal, [LifecycleState.Prepared, LifecycleState.Coated, LifecycleState.Sealed, LifecycleState.Finished]),
    ];

    private void Permit(LifecycleState from, StepKind kind, LifecycleState[] to)
    {
        var configuration = machine.Configure(from);
        foreach (var next in to)
        {
            var guards = new[]
            {
                Tuple.Create<Func<bool>, string>(() => situation is { Obstacle: null }, "the surface permits it"),
                Tuple.Create<Func<bool>, string>(() => situation?.Standing == next, Leaves(next)),
            };
            if (next == from)
                configuration.PermitReentryIf(kind, guards);
            else
                configuration.PermitIf(kind, next, guards);
        }
    }

    private static string Leaves(LifecycleState state) => state switch
    {
        LifecycleState.Bare => "nothing has been done to it",
        LifecycleState.Prepared => "prepared, no layer on it",
        LifecycleState.Coated => "the last layer is no varnish",
        LifecycleState.Masked => "a mask is on",
        LifecycleState.Sealed => "the last layer is a varnish",
        LifecycleState.Finished => "last step, no mask left on",
        _ => "",
    };
}
