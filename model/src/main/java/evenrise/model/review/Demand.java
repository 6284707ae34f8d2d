package evenrise.model.review;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.electrical.AmplifierDemand;
import evenrise.model.electrical.LinePower;
import evenrise.model.project.Amplifier;
import evenrise.model.project.Load;
import evenrise.model.project.OutputStage;
import evenrise.model.project.Programme;
import evenrise.model.rules.Layout;
import java.util.OptionalDouble;

/** What an amplifier draws at a programme: by its datasheet where it says so, else by the model of its output stage. */
final class Demand {
    private Demand() {}

    /** From the mains, active. */
    static double watts(Amplifier amplifier, Programme programme) {
        OptionalDouble stated =
                programme == Programme.THIRD ? amplifier.thirdPowerWatts() : amplifier.eighthPowerWatts();
        return stated.orElseGet(() -> model(amplifier, duty(programme)));
    }

    /** Mean output. */
    static double outputWatts(Amplifier amplifier, Programme programme) {
        return duty(programme) * amplifier.ratedOutputWatts();
    }

    static double amps(Layout layout, Load load, Amplifier amplifier, Programme programme) {
        return amps(layout, load, watts(amplifier, programme));
    }

    static double idleAmps(Layout layout, Load load, Amplifier amplifier) {
        return amps(layout, load, amplifier.idleWatts());
    }

    static double voltAmpsPerAmp(Layout layout, Load load) {
        return Level.of(layout, load).voltAmpsPerAmp(load.poles());
    }

    /** Where the figure at the stated programme comes from. */
    static String source(Amplifier amplifier) {
        boolean isStated = amplifier.programme() == Programme.THIRD
                ? amplifier.thirdPowerWatts().isPresent()
                : amplifier.eighthPowerWatts().isPresent();
        if (isStated) {
            return "the datasheet";
        }
        return amplifier.outputStage() == OutputStage.LINEAR
                ? "an ideal linear output stage, which real ones exceed"
                : "a switching output stage of " + TENTHS.percent(amplifier.efficiencyPercent());
    }

    private static double amps(Layout layout, Load load, double watts) {
        return LinePower.amps(voltAmpsPerAmp(layout, load), watts, load.powerFactor(), load.harmonicRatio());
    }

    private static double model(Amplifier amplifier, double duty) {
        return amplifier.outputStage() == OutputStage.LINEAR
                ? AmplifierDemand.linearWatts(amplifier.ratedOutputWatts(), duty, amplifier.idleWatts())
                : AmplifierDemand.switchingWatts(
                        amplifier.ratedOutputWatts(), duty, amplifier.idleWatts(), amplifier.efficiencyPercent() / 100);
    }

    private static double duty(Programme programme) {
        return programme == Programme.THIRD ? AmplifierDemand.THIRD : AmplifierDemand.EIGHTH;
    }
}
