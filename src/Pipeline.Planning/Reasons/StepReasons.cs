using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>When a step is planned, what holds it back and what it holds back.</summary>
/// <param name="Runs">Each stretch in which some units go through it, in order of time; of coats that dry between, one coat after the other.</param>
/// <param name="Slack">By how much it, or its last coat, could be finished later, all else staying, without breaking a wait, a due time or the end of the whole; what keeps the hands busy is not looked at.</param>
/// <param name="OnChain">True if it is one of the tasks that make the plan as long as it is.</param>
/// <param name="HoldsBack">What would start earlier if it were done earlier, and what else has to wait for it, in order of time.</param>
public sealed record StepReasons(Sequence<StepRun> Runs, Duration Slack, bool OnChain, Sequence<HeldBack> HoldsBack)
{
    /// <summary>True if all of it has been done.</summary>
    public bool IsDone => Runs.All(run => run.IsDone);
}

/// <summary>Some units going through a step.</summary>
/// <param name="From">The start.</param>
/// <param name="To">When the hands are free again; of a step that runs by itself, when it is over.</param>
/// <param name="Painter">Who does it; null where nobody does.</param>
/// <param name="Coat">Which coat: <c>coat 2 of 3</c>; empty for a step whose coats do not have to dry between.</param>
/// <param name="Units">Which of them: <c>no. 1-3 of 5</c>; empty for a single piece.</param>
/// <param name="Because">What keeps it from starting earlier.</param>
/// <param name="IsDone">Whether it has been done.</param>
public sealed record StepRun(ZonedDateTime From, ZonedDateTime To, string? Painter, string Coat, string Units, string Because, bool IsDone);

/// <summary>Something that waits for a step.</summary>
/// <param name="What">The step that waits, with its model where that is another: <c>'varnish the suit' on Line diver</c>.</param>
/// <param name="From">When it starts.</param>
/// <param name="Because">Why it waits.</param>
/// <param name="IsBinding">True if it starts when it does because of this; false if something else holds it back longer.</param>
public sealed record HeldBack(string What, ZonedDateTime From, string Because, bool IsBinding);

/// <summary>Why a plan is as long as it is.</summary>
/// <param name="Target">What the chain leads to: the model, and when it is ready.</param>
/// <param name="Chain">The tasks and waits that lead there from the start, in words.</param>
/// <param name="Span">From the first cause to the end of the chain.</param>
/// <param name="Hands">Of that, hands are at work for so long.</param>
/// <param name="Drying">Of that, something dries or sets, or a step runs by itself.</param>
/// <param name="Away">The rest: nothing is waited for but that somebody sits at the bench, or has room for it.</param>
/// <param name="Waits">The waits of the chain by what is waited for, the longest together first.</param>
/// <param name="Sittings">The sittings of the chain that are filled to the last minutes, in order of time.</param>
/// <param name="Models">By how much each model could be ready later without anything being late or ending later, in file order.</param>
public sealed record LateReasons(
    ModelFinish Target,
    Sequence<string> Chain,
    Duration Span,
    Duration Hands,
    Duration Drying,
    Duration Away,
    Sequence<ChainWait> Waits,
    Sequence<ZonedDateTime> Sittings,
    Sequence<ModelSlack> Models);

/// <summary>Waits of one kind on the chain.</summary>
/// <param name="For">What is waited for: <c>recoatable</c>.</param>
/// <param name="Times">How often.</param>
/// <param name="Together">How long, added up.</param>
public sealed record ChainWait(string For, int Times, Duration Together);

/// <summary>A model's slack.</summary>
public sealed record ModelSlack(ModelFinish Finish, Duration Slack);
