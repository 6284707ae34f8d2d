package evenrise.model.review;

import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import java.util.OptionalDouble;

/** Sources for tests. */
final class Sources {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private Sources() {}

    static SupplySource utility(double faultAmps) {
        return SupplySource.builder()
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

    static SupplySource transformer(double kva, double impedancePercent) {
        return SupplySource.builder()
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

    static SupplySource bareTransformer() {
        return SupplySource.builder()
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

    static SupplySource ups(double kva, double currentLimitPercent) {
        return SupplySource.builder()
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
