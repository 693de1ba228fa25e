using Cloveshed.Ledger;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Cloveshed.Web.Shared;

/// <summary>Ready means that the ledger can be read.</summary>
internal sealed class LedgerReady(ShedLedger ledger) : IHealthCheck
{
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            ledger.Head();
            return Task.FromResult(HealthCheckResult.Healthy());
        }
        catch (LedgerFault fault)
        {
            return Task.FromResult(HealthCheckResult.Unhealthy(fault.Message, fault));
        }
    }
}
