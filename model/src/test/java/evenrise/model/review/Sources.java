package evenrise.model.review;

import evenrise.model.project.Source;
import evenrise.model.project.SourceKind;
import java.util.OptionalDouble;

/** Sources for tests. */
final class Sources {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private Sources() {}

    static Source utility(double faultAmps) {
        return new Source(SourceKind.UTILITY, NONE, OptionalDouble.of(faultAmps), NONE, NONE, NONE, NONE, NONE);
    }

    static Source transformer(double kva, double impedancePercent) {
        return new Source(
                SourceKind.TRANSFORMER,
                OptionalDouble.of(kva),
                NONE,
                OptionalDouble.of(impedancePercent),
                NONE,
                NONE,
                NONE,
                NONE);
    }

    static Source bareTransformer() {
        return new Source(SourceKind.TRANSFORMER, OptionalDouble.of(75), NONE, NONE, NONE, NONE, NONE, NONE);
    }

    static Source ups(double kva, double currentLimitPercent) {
        return new Source(
                SourceKind.UPS,
                OptionalDouble.of(kva),
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                OptionalDouble.of(currentLimitPercent));
    }
}
