package rosinbook.testing;

import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Hands {@link Browsers} to tests; every class of a run shares the one browser, which is closed after the last. */
public final class OneBrowser implements BeforeAllCallback, ParameterResolver {
    @Override
    public void beforeAll(ExtensionContext context) {
        browsers(context);
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Browsers.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return browsers(context);
    }

    /** The store closes what it holds at the end of the run. */
    private static Browsers browsers(ExtensionContext context) {
        return context.getRoot()
                .getStore(ExtensionContext.Namespace.create(OneBrowser.class))
                .getOrComputeIfAbsent(Browsers.class, missing -> Browsers.open(), Browsers.class);
    }
}
