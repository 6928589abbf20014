using System.Diagnostics;
using MediatR;
using Serilog;
using Serilog.Events;

namespace Pipeline.Engine;

/// <summary>Turns an exception of ours into one clear answer, and keeps the details in a report.</summary>
internal sealed class Guarded<TRequest, T>(IBreakdowns breakdowns) : IPipelineBehavior<TRequest, Answer<T>>
    where TRequest : IRequest<Answer<T>>
{
    public async Task<Answer<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Answer<T>> next)
    {
        try
        {
            return await next().ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is not OperationCanceledException || !cancellationToken.IsCancellationRequested)
        {
            return new Answer<T>.Broke(Faults.InWords(fault), breakdowns.Report(typeof(TRequest).Name, fault));
        }
    }
}

/// <summary>Logs each request with its outcome and time.</summary>
internal sealed class Logged<TRequest, T>(ILogger log) : IPipelineBehavior<TRequest, Answer<T>>
    where TRequest : IRequest<Answer<T>>
{
    public async Task<Answer<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Answer<T>> next)
    {
        var started = Stopwatch.GetTimestamp();
        var answer = await next().ConfigureAwait(false);
        var outcome = answer switch
        {
            Answer<T>.Given => "given",
            Answer<T>.Refused refused => $"refused: {string.Join("; ", refused.Why.Select(why => why.Message))}",
            Answer<T>.Broke broke => $"broke: {broke.What}",
            _ => "unknown",
        };
        log.Write(
            answer is Answer<T>.Broke ? LogEventLevel.Error : LogEventLevel.Debug,
            "{Request:l} {Outcome:l} in {Milliseconds} ms",
            typeof(TRequest).Name,
            outcome,
            (int)Stopwatch.GetElapsedTime(started).TotalMilliseconds);
        return answer;
    }
}
