using MediatR;
using Pipeline.Planning;
using Pipeline.Reports;

namespace Pipeline.Engine;

/// <summary>Reads plans that were written as JSON.</summary>
internal sealed class WrittenPlans(IDisk disk)
{
    // A plan of twenty thousand tasks takes some twenty.
    private const int LargestBytes = 128 * 1024 * 1024;

    private const string Hint = "Give a file that 'pipeline plan --as json' or 'pipeline plan --out' wrote.";

    /// <summary>The plan, or why there is none.</summary>
    public (WrittenPlan? Plan, Refusal? Refusal) Read(string path)
    {
        switch (disk.Read(path, LargestBytes))
        {
            case FileRead.Refused refused:
                return (null, refused.Why);
            case FileRead.TooLarge:
                return (null, new Refusal($"{path} is too large for a plan", Hint));
            case FileRead.Whole whole:
                var (plan, wrong) = PlanJsonReading.Read(whole.Bytes);
                return (plan is null ? null : plan with { Name = Path.GetFileName(path) }, wrong is null ? null : new Refusal($"{path} {Faults.OnOneLine(wrong)}", Hint));
            case var other:
                throw new InvalidOperationException($"Unknown read {other}.");
        }
    }
}

/// <summary>Asks what is different between two plans of one batch, written as JSON.</summary>
/// <param name="Before">The first plan's file.</param>
/// <param name="After">The second plan's file.</param>
public sealed record ComparePlans(string Before, string After) : IRequest<Answer<PlanComparison>>;

internal sealed class ComparePlansHandler(WrittenPlans plans) : IRequestHandler<ComparePlans, Answer<PlanComparison>>
{
    public Task<Answer<PlanComparison>> Handle(ComparePlans request, CancellationToken cancellationToken) => Task.FromResult(Compare(request));

    private Answer<PlanComparison> Compare(ComparePlans request)
    {
        var (before, whyBefore) = plans.Read(request.Before);
        var (after, whyAfter) = plans.Read(request.After);
        if (before is null || after is null)
            return new Answer<PlanComparison>.Refused([.. new[] { whyBefore, whyAfter }.OfType<Refusal>()]);
        return before.Batch == after.Batch
            ? new Answer<PlanComparison>.Given(PlanComparison.Of(before, after))
            : new Answer<PlanComparison>.Refused([new Refusal(
                $"{request.Before} is a plan of '{Faults.OnOneLine(before.Batch)}' and {request.After} one of '{Faults.OnOneLine(after.Batch)}'",
                "Compare two plans of the same batch.")]);
    }
}
