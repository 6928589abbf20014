using MediatR;
using NodaTime;
using Serilog;

namespace Pipeline.Engine;

/// <summary>What the engine is given of the world.</summary>
/// <param name="Disk">The disk.</param>
/// <param name="Clock">The clock.</param>
/// <param name="Log">The log.</param>
/// <param name="Plugins">The plugins in use.</param>
/// <param name="Breakdowns">Keeps the details of the program's own mistakes.</param>
public sealed record EngineParts(IDisk Disk, IClock Clock, ILogger Log, PluginShelf Plugins, IBreakdowns Breakdowns);

/// <summary>
/// Puts the engine together: one handler per request, the same behaviours around each, listeners for notifications. Everything
/// is said here in so many words; nothing is found by looking through assemblies.
/// </summary>
public sealed class Composition
{
    private readonly Dictionary<Type, object> services = [];
    private readonly EngineParts parts;

    private Composition(EngineParts parts) => this.parts = parts;

    /// <summary>The engine, answering all requests.</summary>
    /// <param name="parts">What it is given of the world.</param>
    /// <param name="listen">Adds listeners for notifications.</param>
    public static IMediator Engine(EngineParts parts, Action<Composition>? listen = null)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var composition = new Composition(parts);
        var mediator = new Mediator(composition.Find);
        var inputs = new Inputs(parts.Disk);
        var check = new CheckFilesHandler(inputs, parts.Plugins);
        composition.Answers(check);
        composition.Answers(new MendFilesHandler(parts.Disk, inputs, parts.Plugins));
        var plans = new WrittenPlans(parts.Disk);
        var planner = new PlanFilesHandler(check, plans, parts.Plugins, parts.Clock, mediator);
        composition.Answers(planner);
        composition.Answers(new ExplainStepHandler(check, planner, parts.Plugins));
        composition.Answers(new ComparePlansHandler(plans));
        composition.Answers(new ShowTablesHandler(check, parts.Plugins));
        composition.Answers(new ListVerbsHandler(parts.Plugins));
        composition.Answers(new ListRulesHandler(parts.Plugins));
        composition.Answers(new ShowVerbHandler(parts.Plugins));
        composition.Answers(new PrintSchemaHandler(parts.Plugins));
        composition.Answers(new ShowRuleHandler(parts.Plugins));
        composition.Answers(new ListRulePagesHandler(parts.Plugins));
        listen?.Invoke(composition);
        return mediator;
    }

    /// <summary>Adds listeners for a notification, called in this order.</summary>
    public void Listens<TNotification>(params INotificationHandler<TNotification>[] listeners)
        where TNotification : INotification =>
        services[typeof(IEnumerable<INotificationHandler<TNotification>>)] = listeners;

    private void Answers<TRequest, T>(IRequestHandler<TRequest, Answer<T>> handler)
        where TRequest : IRequest<Answer<T>>
    {
        services[typeof(IRequestHandler<TRequest, Answer<T>>)] = handler;
        services[typeof(IEnumerable<IPipelineBehavior<TRequest, Answer<T>>>)] = new IPipelineBehavior<TRequest, Answer<T>>[]
        {
            new Logged<TRequest, T>(parts.Log),
            new Guarded<TRequest, T>(parts.Breakdowns),
        };
    }

    private object Find(Type service)
    {
        if (services.TryGetValue(service, out var found))
            return found;

        // a notification nobody listens to
        if (service.IsGenericType && service.GetGenericTypeDefinition() == typeof(IEnumerable<>))
            return Array.CreateInstance(service.GetGenericArguments()[0], 0);
        throw new InvalidOperationException($"Nobody answers {service}.");
    }
}
