package evenrise.solver.app;

import java.util.Optional;

/** The version of the jar, or a word that says that there is none. */
final class ProgramVersion {
    private ProgramVersion() {}

    static String ofThisProgram() {
        return Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
                .orElse("unpackaged");
    }
}
