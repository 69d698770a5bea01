/** The same examples in every run, and no search for smaller ones: that something fails is all that is asked. */
import fc from 'fast-check';

fc.configureGlobal({ seed: 20_260_302, endOnFailure: true });
