using MediatR;
using NodaTime;

namespace Pipeline.Engine;

/// <summary>A workflow file is there that has not been planned yet, or has changed.</summary>
/// <param name="Name">Its name in the folder.</param>
public sealed record FileArrived(string Name) : INotification;

/// <summary>The results of a version of a file lie beside it, whole.</summary>
/// <param name="Name">The workflow file's name in the folder.</param>
/// <param name="Result">What they are.</param>
/// <param name="Errors">How many findings of level error there are.</param>
/// <param name="LastReady">When the last model is ready, or null without a plan.</param>
public sealed record PlanWritten(string Name, HostResult Result, int Errors, ZonedDateTime? LastReady) : INotification;

/// <summary>Something stands in the way; it is tried again by itself.</summary>
/// <param name="Message">What, as a sentence without its full stop.</param>
public sealed record FolderTrouble(string Message) : INotification;
