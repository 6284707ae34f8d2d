package evenrise.solver.script;

import org.teavm.extension.spi.substitution.SimpleSubstitutionPolicy;
import org.teavm.extension.spi.substitution.SubstitutionSink;

/** Two classes ask records for what no browser knows; others stand in for them there. */
public final class StandInClasses extends SimpleSubstitutionPolicy {
    private static final String CONTRACT = "evenrise.model.contract";

    @Override
    public void contribute(SubstitutionSink sink) {
        sink.selectClasses(named(CONTRACT + ".Contract").or(named(CONTRACT + ".Defaults")))
                .replacePackage(CONTRACT, "evenrise.solver.script.contract");
    }
}
