using System.Runtime.CompilerServices;
using Bunit;

namespace CookAlong.Web.Tests;

static class Patience
{
    /// <summary>
    /// What a page shows after work on another thread is waited for as long as in a browser. bUnit's own second is too
    /// short for a machine that builds and plans beside the tests; only a test that fails waits to the end of it.
    /// </summary>
    [ModuleInitializer]
    internal static void Wait() => BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);
}
