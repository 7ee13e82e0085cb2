using MonitorSim.Demo.Cases;

namespace MonitorSim.Demo;

/// <summary>Every case of the demo. A new one goes into this list, in alphabetical order; nothing else.</summary>
public static class DemoCases
{
    /// <summary>By name.</summary>
    public static IReadOnlyList<IDemoCase> All { get; } =
    [
        new BladeBrakeFades(),
        new BladeBrakeQuick(),
        new BladeMotorWarm(),
        new BladeOffTurning(),
        new BladeOverspeed(),
        new BladeStanding(),
        new BridgeApproach(),
        new BridgeBlindWindow(),
        new BridgeCable(),
        new BridgeDriveFault(),
        new BridgeFeedRange(),
        new BridgeGateSpeed(),
        new BridgeHold(),
        new BridgeSimulated(),
        new BridgeSlowCycle(),
        new BridgeStopBad(),
        new BridgeStopGood(),
        new BridgeTwoEncoders(),
        new LiftBrakeSlip(),
        new LiftBreakaway(),
        new LiftInching(),
        new LiftResidual(),
        new LiftRunaway(),
        new LiftShortCircuit(),
        new LiftSlack(),
        new LiftStandstill(),
        new SawGroup(),
        new TurntableCam(),
        new TurntableDirection(),
        new TurntableNoise(),
        new TurntableWindow(),
    ];
}
