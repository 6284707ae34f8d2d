package evenrise.model.validation;

import static evenrise.model.Fixtures.aLoad;

import evenrise.model.electrical.Crest;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.VoltageBand;
import evenrise.model.project.Load;
import java.util.List;

/** Values for crests of idle currents, and for peaks over the supply's voltages. */
final class PeakChecks extends CheckList {
    private static final String BY_HAND = "computed by hand from the stated formula";
    private static final String SECTION = "Crests, and peaks over the supply's voltages";

    static List<Check> all() {
        PeakChecks checks = new PeakChecks();
        checks.crests();
        checks.peaks();
        return List.copyOf(checks.checks);
    }

    private void crests() {
        String source = BY_HAND + ": √2·(1 + r)/√(1 + r²), both crests together";
        number(SECTION, "crest over rms", "no third harmonic", 1.4142, 5e-5, "", Crest.ofThirdHarmonic(0), source);
        number(SECTION, "crest over rms", "third harmonic 0.3", 1.761, 5e-4, "", Crest.ofThirdHarmonic(0.3), source);
        number(SECTION, "crest over rms", "third harmonic 0.4", 1.838, 5e-4, "", Crest.ofThirdHarmonic(0.4), source);
        number(SECTION, "crest over rms", "third harmonic 0.7", 1.970, 5e-4, "", Crest.ofThirdHarmonic(0.7), source);
        number(SECTION, "crest over rms", "third harmonic 1", 2.0, 5e-4, "", Crest.ofThirdHarmonic(1), source);
    }

    private void peaks() {
        VoltageBand tenPercent = new VoltageBand(0.9, 1.1);
        peak(
                "idle 4 A, peak 80 A, third harmonic 0.4, ±10 %",
                89.95,
                aLoad().idleAmps(4).inrushPeakAmps(80).thirdHarmonic(0.4).build(),
                tenPercent,
                BY_HAND + ": (80 − 5.657)·1.1 + 4·1.8383/0.9");
        peak(
                "idle 10 A, peak 80 A, a sine, ±10 %",
                88.157,
                aLoad().idleAmps(10).inrushPeakAmps(80).thirdHarmonic(0).build(),
                tenPercent,
                BY_HAND + ": (80 − 14.142)·1.1 + 14.142/0.9");
        peak(
                "idle 10 A, no inrush, a sine, 94 to 110 %",
                15.556,
                aLoad().idleAmps(10).thirdHarmonic(0).build(),
                new VoltageBand(0.94, 1.1),
                "identity: an impedance of 14.142 A crest draws 1.1 times that");
    }

    private void peak(String inputs, double expected, Load load, VoltageBand band, String source) {
        InrushEnvelope envelope = InrushEnvelope.within(load, 0, band);
        number(SECTION, "peak", inputs, expected, 0.005, "A", envelope.baseAmps() + envelope.excessAmps(), source);
    }
}
