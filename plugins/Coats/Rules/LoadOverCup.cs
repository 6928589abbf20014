using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>More is to be sprayed from one filling than the cup holds.</summary>
public sealed class LoadOverCup : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "What is to be sprayed from one filling fits the airbrush's cup.";

    /// <inheritdoc/>
    public override string Source => "common practice; the spreading rate is that of coating data sheets";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        for (var r = 0; r < batch.Routes.Count; r++)
        {
            foreach (var moment in batch.Routes[r].Moments)
            {
                if (moment.Step.Work.Loads is not { } meant || moment.Step.Coat() is not { Method: Method.Airbrush, Paint: { } paint } coat)
                    continue;
                var need = PaintNeed.Of(coat, moment.SizeOfStep(), moment.Model.Size, moment.Model.Count, batch.Cup);
                if (need.Loads <= meant)
                    continue;
                var cup = batch.Cup ?? new Volume(PaintNeed.CupMillilitres);
                yield return new BatchVerdict
                {
                    Level = Level.Error,
                    Place = moment.Step.Place,
                    Step = new StepInBatch(r, moment.Step.Index),
                    Areas = moment.Step.Areas,
                    Message = FormattableString.Invariant(
                        $"This takes about {Math.Round(need.Millilitres, 1)} mL of {paint.Name}, and {Filled(meant)} of the {cup} cup {(meant == 1 ? "holds" : "hold")} {Math.Round(meant * cup.Millilitres * PaintNeed.CupFill, 1)} mL: it does not fit."),
                    Remedy = FormattableString.Invariant($"Split it into {need.Loads} equal fillings of {Math.Round(need.Millilitres / need.Loads, 1)} mL, mixed in one go."),
                    Mend = moment.SetKey("loads", Mends.Written(need.Loads)),
                };
            }
        }
    }

    private static string Filled(int times) => times == 1 ? "one filling" : FormattableString.Invariant($"{times} fillings");
}
