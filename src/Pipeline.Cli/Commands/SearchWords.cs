using System.CommandLine;
using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;

namespace Pipeline.Cli;

/// <summary>The options that say how to plan; each command that plans has them.</summary>
internal sealed class SearchWords
{
    private readonly Option<string?> from = new("--from")
    {
        Description = "Plan nothing before this, in the bench's time zone, such as \"2026-11-30 18:00\". With --done that time if left out, else now.",
        HelpName = "DATE-TIME",
    };

    private readonly Option<string?> pace =
        CommonWords.OneOf("--pace", "Overrides the file: comfortable keeps to the high drying times, brisk to the low ones.", "comfortable", "brisk");

    private readonly Option<string?> effort = CommonWords.OneOf("--effort", "How hard to look for a better plan, in counted work.", "quick", "usual", "thorough");

    private readonly Option<ulong> seed = new("--seed") { Description = "The same seed gives the same plan.", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };

    private readonly Option<string?> keep = new("--keep")
    {
        Description = "A plan of the same batch, as JSON, that is already on the wall: moves no more of it than is worth while.",
        HelpName = "PLAN.json",
    };

    private readonly Option<string?> done = new("--done")
    {
        Description = "With --keep: what that plan has finished by then, in the bench's time zone, has been done; plans what is left.",
        HelpName = "DATE-TIME",
    };

    /// <summary>What was asked for.</summary>
    /// <param name="From">As it was written.</param>
    /// <param name="Pace">As it was written.</param>
    /// <param name="Effort">As it was written.</param>
    /// <param name="Seed">The seed.</param>
    /// <param name="Keep">A plan's file.</param>
    /// <param name="Done">As it was written.</param>
    internal sealed record Wish(string? From, string? Pace, string? Effort, ulong Seed, string? Keep, string? Done)
    {
        /// <summary>The request; null if a time cannot be understood.</summary>
        public PlanFiles? Request(Sequence<WorkflowInput> inputs, out Refusal? refusal)
        {
            LocalDateTime? start = From is null ? null : StartText.Parse(From);
            LocalDateTime? until = Done is null ? null : StartText.Parse(Done);
            refusal = From is not null && start is null ? NotUnderstood("--from", From)
                : Done is not null && until is null ? NotUnderstood("--done", Done)
                : Done is not null && Keep is null ? new Refusal("--done goes by a plan that has the work in it", "Give the plan on the wall with --keep PLAN.json.")
                : null;
            return refusal is not null ? null : new PlanFiles(
                inputs,
                start,
                Pace switch { "comfortable" => Workflows.Pace.Comfortable, "brisk" => Workflows.Pace.Brisk, _ => null },
                Effort switch { "quick" => SearchEffort.Quick, "thorough" => SearchEffort.Thorough, _ => SearchEffort.Usual },
                Seed,
                Keep: Keep,
                Done: until);
        }

        private static Refusal NotUnderstood(string option, string text) =>
            new($"{option} does not understand '{text}'", "Give a date and time such as \"2026-11-30 18:00\", as the clock at the bench shows it.");
    }

    /// <summary>The options, to be added to a command.</summary>
    public IEnumerable<Option> All => [from, pace, effort, seed, keep, done];

    /// <summary>What a call says.</summary>
    public Wish Of(ParseResult parsed) => new(parsed.GetValue(from), parsed.GetValue(pace), parsed.GetValue(effort), parsed.GetValue(seed), parsed.GetValue(keep), parsed.GetValue(done));

    /// <summary>True if a call says any of it.</summary>
    public bool AreGiven(ParseResult parsed) => All.Any(option => parsed.GetResult(option) is { Implicit: false });
}
