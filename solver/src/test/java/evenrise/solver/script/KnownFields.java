package evenrise.solver.script;

import org.teavm.extension.spi.reflection.SimpleReflectionPolicy;

/** What is known of classes in a page: fields and constructors of the records of project and plan, fields of their builders. */
public final class KnownFields extends SimpleReflectionPolicy {
    @Override
    protected void setup() {
        for (String room : new String[] {"evenrise.model.project", "evenrise.model.plan"}) {
            selectPackage(room).reflectableFields(INSTANCE);
            selectPackage(room).reflectableMethods(named("<init>"));
        }
    }
}
