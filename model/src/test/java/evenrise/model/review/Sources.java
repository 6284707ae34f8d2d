package evenrise.model.review;

import evenrise.model.project.Source;
import evenrise.model.project.SourceKind;
import java.util.OptionalDouble;

/** Sources for tests. */
final class Sources {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private Sources() {}

    static Source utility(double faultAmps) {
        return Source.builder()
                .kind(SourceKind.UTILITY)
                .ratedKva(NONE)
                .faultAmps(faultAmps)
                .impedancePercent(NONE)
                .xOverR(NONE)
                .subtransientReactancePercent(NONE)
                .transientReactancePercent(NONE)
                .currentLimitPercent(NONE)
                .build();
    }

    static Source transformer(double kva, double impedancePercent) {
        return Source.builder()
                .kind(SourceKind.TRANSFORMER)
                .ratedKva(kva)
                .faultAmps(NONE)
                .impedancePercent(impedancePercent)
                .xOverR(NONE)
                .subtransientReactancePercent(NONE)
                .transientReactancePercent(NONE)
                .currentLimitPercent(NONE)
                .build();
    }

    static Source bareTransformer() {
        return Source.builder()
                .kind(SourceKind.TRANSFORMER)
                .ratedKva(75)
                .faultAmps(NONE)
                .impedancePercent(NONE)
                .xOverR(NONE)
                .subtransientReactancePercent(NONE)
                .transientReactancePercent(NONE)
                .currentLimitPercent(NONE)
                .build();
    }

    static Source ups(double kva, double currentLimitPercent) {
        return Source.builder()
                .kind(SourceKind.UPS)
                .ratedKva(kva)
                .faultAmps(NONE)
                .impedancePercent(NONE)
                .xOverR(NONE)
                .subtransientReactancePercent(NONE)
                .transientReactancePercent(NONE)
                .currentLimitPercent(currentLimitPercent)
                .build();
    }
}
